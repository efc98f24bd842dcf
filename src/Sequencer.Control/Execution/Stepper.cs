using System.Collections.Immutable;
using Sequencer.Control.TransitionSystems;

namespace Sequencer.Control.Execution;

/// <summary>
/// Runs a system scan by scan over flat arrays (a Boolean is 0 or 1). Set <see cref="Inputs"/>, call
/// <see cref="Step"/>: outputs and observed expressions then have this scan's values, and the states
/// are those before the next scan. Nothing is allocated in a scan.
/// </summary>
public abstract class Stepper
{
    protected Stepper(TransitionSystem system, ImmutableArray<Expression> observed)
    {
        System = system;
        ObservedExpressions = observed;
        Inputs = new long[system.Inputs.Length];
        StateValues = new long[system.States.Length];
        Outputs = new long[system.Outputs.Length];
        Observed = new long[observed.Length];
        Initialise();
    }

    public TransitionSystem System { get; }

    public ImmutableArray<Expression> ObservedExpressions { get; }

    public long[] Inputs { get; }

    /// <summary>The states before the next scan; <see cref="SetState"/> and <see cref="SetStates"/> change them from outside.</summary>
    public ReadOnlySpan<long> States => StateValues;

    public long[] Outputs { get; }

    public long[] Observed { get; }

    protected long[] StateValues { get; }

    /// <summary>Back to the state before the first scan; the inputs stay.</summary>
    public void Initialise()
    {
        for (int index = 0; index < StateValues.Length; index++)
        {
            StateValues[index] = System.States[index].Initial;
        }

        StatesWereSet();
    }

    /// <summary>As it was made: nothing put in, nothing come out, before the first scan.</summary>
    public void Reset()
    {
        Array.Clear(Inputs);
        Array.Clear(Outputs);
        Array.Clear(Observed);
        Initialise();
    }

    public void SetState(int place, long value)
    {
        StateValues[place] = value;
        StatesWereSet();
    }

    public void SetStates(ReadOnlySpan<long> values)
    {
        values.CopyTo(StateValues);
        StatesWereSet();
    }

    public abstract void Step();

    /// <summary>
    /// Whether each input that <see cref="IsStillInput"/> and each observed value that <see cref="IsStillObserved"/> is as in the scan
    /// before, and each state that <see cref="IsStillState"/> as it was before the last scan. A stepper that does not know says no.
    /// </summary>
    public virtual bool KeptStill => false;

    /// <summary>Others may be still than before where this has grown.</summary>
    public virtual long StillVersion => 0;

    public virtual bool IsStillInput(int place) => false;

    public virtual bool IsStillState(int place) => false;

    public virtual bool IsStillObserved(int place) => false;

    /// <summary>Tells a stepper that remembers something of its states that they are others now.</summary>
    protected virtual void StatesWereSet()
    {
    }
}
