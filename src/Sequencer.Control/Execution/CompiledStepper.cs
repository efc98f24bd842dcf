using System.Collections.Immutable;
using Sequencer.Control.TransitionSystems;

namespace Sequencer.Control.Execution;

/// <summary>
/// Runs the code of a <see cref="CompiledSystem"/>; many steppers, also on different threads, may
/// share one.
/// </summary>
public sealed class CompiledStepper : Stepper
{
    private readonly ImmutableArray<ScanCode> _pieces;
    private readonly long[] _nextStates;
    private readonly long[] _carried;

    public CompiledStepper(TransitionSystem system, ImmutableArray<Expression> observed)
        : this(CompiledSystem.Compile(system, observed))
    {
    }

    public CompiledStepper(CompiledSystem compiled)
        : base(compiled.System, compiled.Observed)
    {
        _pieces = compiled.Pieces;
        _nextStates = new long[States.Length];
        _carried = new long[compiled.Carried];
    }

    public override void Step()
    {
        foreach (ScanCode piece in _pieces)
        {
            piece(Inputs, StateValues, _nextStates, Outputs, Observed, _carried);
        }

        _nextStates.CopyTo(StateValues, 0);
    }
}
