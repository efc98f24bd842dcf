using System.Collections.Immutable;
using Sequencer.Control.Execution;
using Sequencer.Control.TransitionSystems;

namespace Sequencer.Simulation.Traces;

/// <summary>
/// What decided the end of a run: from the last scan back along the values that made others what they were. Of several
/// facts of which one is enough, one is followed. A state that never changed is not followed: nothing made it so.
/// </summary>
internal sealed class DecisiveFacts
{
    private readonly TransitionSystem _system;
    private readonly TraceHistory _history;
    private readonly Expression[] _nodes;
    private readonly Dictionary<Expression, int> _places = [];
    private readonly Interpreter _interpreter;
    private readonly NamedParts _named;
    private readonly PriorityQueue<(Expression Root, Variable? Own, long Scan), long> _open = new();
    private readonly HashSet<(Expression, long)> _seen = [];
    private readonly HashSet<(int State, long Scan)> _followed = [];
    private readonly SortedDictionary<string, long> _definitions = new(StringComparer.Ordinal);
    private readonly HashSet<int> _states = [];
    private readonly HashSet<int> _inputs = [];
    private long _evaluated;

    private DecisiveFacts(TraceHistory history, Expression end)
    {
        _history = history;
        _system = history.System;
        _nodes = ExpressionGraph.InOrder([end, .. _system.States.Select(state => state.Next)]);
        for (int place = 0; place < _nodes.Length; place++)
        {
            _places.Add(_nodes[place], place);
        }

        _interpreter = new Interpreter(_system, [.. _nodes]);
        _named = new NamedParts(_system.Definitions);
    }

    /// <summary>The definitions that took part, each with the last scan in which it was so, else the last in which it was not.</summary>
    public IReadOnlyDictionary<string, long> Definitions => _definitions;

    /// <summary>Whether a state that changed took part.</summary>
    public bool HasState(int state) => _states.Contains(state);

    public bool HasInput(int input) => _inputs.Contains(input);

    public static DecisiveFacts Of(TraceHistory history, Expression end)
    {
        DecisiveFacts facts = new(history, end);
        facts.Ask(end, null, history.Scans);
        while (facts._open.TryDequeue(out (Expression Root, Variable? Own, long Scan) next, out _))
        {
            facts.Follow(next.Root, next.Own, next.Scan);
        }

        return facts;
    }

    private void Ask(Expression root, Variable? own, long scan) => _open.Enqueue((root, own, scan), -scan);

    private void Evaluate(long scan)
    {
        if (_evaluated == scan)
        {
            return;
        }

        _evaluated = scan;
        for (int input = 0; input < _interpreter.Inputs.Length; input++)
        {
            _interpreter.Inputs[input] = _history.Input(input).At(scan);
        }

        for (int state = 0; state < _interpreter.States.Length; state++)
        {
            _interpreter.SetState(state, _history.State(state).At(scan));
        }

        _interpreter.Step();
    }

    private void Follow(Expression root, Variable? own, long scan)
    {
        Evaluate(scan);
        Stack<Expression> open = new([root]);
        while (open.TryPop(out Expression? node))
        {
            if (!_seen.Add((node, scan)))
            {
                continue;
            }

            foreach (Definition definition in _named.Of(node))
            {
                // What was so says more than that it was not so later.
                if (!_definitions.TryAdd(definition.Name, scan) && !WasSo(definition, _definitions[definition.Name]) && WasSo(definition, scan))
                {
                    _definitions[definition.Name] = scan;
                }
            }

            if (node.Variable is { } variable)
            {
                Reach(variable, own, scan);
            }

            foreach (Expression part in Deciding(node))
            {
                open.Push(part);
            }
        }
    }

    private bool WasSo(Definition definition, long scan) => _history.Definition(definition.Name)?.At(scan) == 1;

    private void Reach(Variable variable, Variable? own, long scan)
    {
        if (variable.Role == VariableRole.Input)
        {
            _inputs.Add(variable.Index);
            return;
        }

        ValueRun run = _history.State(variable.Index).RunAt(scan);
        if (variable == own || (run.From == 1 && run.Change == 0) || !_followed.Add((variable.Index, run.From)))
        {
            return;
        }

        _states.Add(variable.Index);
        Expression next = _system.States[variable.Index].Next;
        if (run.Change != 0 && scan > run.From)
        {
            Ask(next, variable, scan - 1);
        }

        if (run.From > 1)
        {
            Ask(next, null, run.From - 1);
        }
    }

    private ImmutableArray<Expression> Deciding(Expression node) => node.Kind switch
    {
        ExpressionKind.And when Value(node) == 0 => [OneOf(node.Operands, 0)],
        ExpressionKind.Or when Value(node) == 1 => [OneOf(node.Operands, 1)],
        ExpressionKind.IfThenElse => [node.Operands[0], node.Operands[Value(node.Operands[0]) == 1 ? 1 : 2]],
        _ => node.Operands,
    };

    /// <summary>The one that is soonest told: an input, a state that never changed, one that did, anything else.</summary>
    private Expression OneOf(ImmutableArray<Expression> operands, long value) =>
        operands.Where(operand => Value(operand) == value).MinBy(Distance)
        ?? throw new System.Diagnostics.UnreachableException("no operand makes the value what it is");

    private int Distance(Expression operand)
    {
        Variable? variable = (operand.Kind == ExpressionKind.Not ? operand.Operands[0] : operand).Variable;
        return variable is null ? 3 : variable.Role == VariableRole.Input ? 0 : _history.State(variable.Index).Runs.Count == 1 ? 1 : 2;
    }

    private long Value(Expression node) => _interpreter.Observed[_places[node]];
}
