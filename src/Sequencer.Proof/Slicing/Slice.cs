using System.Collections.Immutable;
using Sequencer.Control.Traces;
using Sequencer.Control.TransitionSystems;

namespace Sequencer.Proof.Slicing;

/// <summary>
/// The part of a system that one requirement can depend on, as a system of its own, in its own builder,
/// with the way back to the whole.
/// </summary>
internal sealed class Slice
{
    private readonly TransitionSystem _whole;
    private readonly ImmutableArray<Variable> _wholeInputs;
    private readonly ImmutableArray<Variable> _wholeStates;
    private readonly IReadOnlyList<SettledState> _settled;

    public Slice(
        TransitionSystem whole,
        TransitionSystem part,
        ExpressionBuilder builder,
        ImmutableArray<Variable> wholeInputs,
        ImmutableArray<Variable> wholeStates,
        IReadOnlyList<SettledState> settled)
    {
        _whole = whole;
        System = part;
        Builder = builder;
        _wholeInputs = wholeInputs;
        _wholeStates = wholeStates;
        _settled = settled;
    }

    public TransitionSystem System { get; }

    public ExpressionBuilder Builder { get; }

    public Requirement Requirement => System.Requirements[0];

    /// <summary>The whole system's inputs that the slice reads, in its order.</summary>
    public ImmutableArray<Variable> Inputs => _wholeInputs;

    /// <summary>The whole system's states that the slice has, in its order.</summary>
    public ImmutableArray<Variable> States => _wholeStates;

    /// <summary>Whether an assumption of the whole system was left out.</summary>
    public bool LacksAssumptions => System.Assumptions.Length < _whole.Assumptions.Length;

    /// <summary>The trace for the whole system: an input outside the slice has its range's value nearest 0.</summary>
    public Trace Widen(Trace trace) => Widen(trace, [.. _whole.Inputs.Select(input => Math.Clamp(0, input.Range.Minimum, input.Range.Maximum))]);

    /// <summary>The trace for the whole system: an input outside the slice has the value given.</summary>
    public Trace Widen(Trace trace, ImmutableArray<long> outside) =>
        new([.. trace.Segments.Select(segment => segment with { Inputs = Widen(segment.Inputs, outside) })]);

    /// <summary>Of a trace of the whole system what the slice reads.</summary>
    public Trace Narrow(Trace trace) =>
        new([.. trace.Segments.Select(segment => segment with { Inputs = [.. _wholeInputs.Select(input => segment.Inputs[input.Index])] })]);

    /// <summary>An invariant of the slice as one of the whole system, with what the states are that the slice did without.</summary>
    public Expression Widen(Expression invariant)
    {
        Dictionary<Variable, Expression> images = [];
        foreach (StateVariable state in System.States)
        {
            images.Add(state.Variable, Builder.Variable(_wholeStates[state.Variable.Index]));
        }

        return Builder.And([Builder.Substitute([invariant], images)[0], .. _settled.Select(state => state.Fact(Builder))]);
    }

    private ImmutableArray<long> Widen(ImmutableArray<long> inputs, ImmutableArray<long> outside)
    {
        long[] all = [.. outside];
        for (int index = 0; index < inputs.Length; index++)
        {
            all[_wholeInputs[index].Index] = inputs[index];
        }

        return [.. all];
    }
}
