using Sequencer.Control.TransitionSystems;
using Sequencer.Text;

namespace Sequencer.Lowering;

/// <summary>A state variable under construction: what this scan reads, and what it leaves behind.</summary>
internal sealed class DeclaredState
{
    private Expression? _next;

    public DeclaredState(Variable variable, Expression current, long initial, bool retained, StatePurpose purpose, Origin origin)
    {
        Variable = variable;
        Current = current;
        Initial = initial;
        Retained = retained;
        Purpose = purpose;
        Origin = origin;
    }

    public Variable Variable { get; }

    /// <summary>The value at the start of this scan.</summary>
    public Expression Current { get; }

    public long Initial { get; }

    public bool Retained { get; }

    public StatePurpose Purpose { get; }

    public Origin Origin { get; }

    /// <summary>The variable itself, as a fact about states alone reads it.</summary>
    public required Expression Stored { get; init; }

    /// <summary>The value after this scan; set once.</summary>
    public Expression Next
    {
        get => _next ?? throw new InvalidOperationException($"{Variable} has no next value");
        set => _next = _next is null ? value : throw new InvalidOperationException($"{Variable} has two next values");
    }
}
