using Sequencer.Control.TransitionSystems;
using Sequencer.Export.Writing;

namespace Sequencer.Export.Equivalence;

/// <summary>
/// How states are related that program and text keep in different forms: steps against the variable of their branch,
/// clocks of conditions against TON instances; and what the text's branches never are together. Guesses, to be checked.
/// </summary>
internal sealed class StateRelation
{
    private const string ProceduralState = "state";

    /// <summary>More values than any enumerated type of ours has.</summary>
    private const long MostValues = 100;

    private readonly VariableImages _images;
    private readonly ExpressionBuilder _builder;
    private readonly ExportedBlock _block;
    private readonly PairedNames _names;
    private readonly TransitionSystem _other;
    private readonly Dictionary<string, Expression> _covered = new(StringComparer.Ordinal);

    public StateRelation(
        TransitionSystem reference, TransitionSystem other, ExportedBlock block, PairedNames names, VariableImages images, ExpressionBuilder builder)
    {
        _images = images;
        _builder = builder;
        _block = block;
        _names = names;
        _other = other;
        foreach (StateVariable state in reference.States.Where(state => images.Reference.ContainsKey(state.Variable)))
        {
            if ((OfStep(state) ?? OfTimer(state) ?? OfCopy(state)) is { } relation)
            {
                _covered.Add(state.Variable.Name, relation);
            }
        }
    }

    public bool Covers(StateVariable state) => _covered.ContainsKey(state.Variable.Name);

    public IEnumerable<Expression> Guesses() => [.. _covered.Values, .. Copies(), .. BranchCopies(), .. Branches(), .. BranchPairs(), .. AtRest()];

    /// <summary>What one unit sees of another is kept beside it, as it was at the end of the last scan.</summary>
    private IEnumerable<Expression> Copies() => _images.Reference.Keys
        .Where(variable => variable.Role == VariableRole.State).Select(OfCopy).OfType<Expression>();

    private Expression? OfCopy(StateVariable state) => OfCopy(state.Variable);

    private Expression? OfCopy(Variable state) =>
        _block.Copies.FirstOrDefault(copy => copy.Path == state.Name) is { } copy && Text(copy.Name) is { } text && text.Sort == state.Sort
            ? _builder.Equal(_images.Reference[state], text)
            : null;

    private Expression? OfStep(StateVariable state)
    {
        foreach (ExportedStep step in _block.Steps)
        {
            string active = FormattableString.Invariant($"{step.Unit}.step{step.Number}.active");
            string? kept = state.Variable.Name == active ? step.Branch : state.Variable.Name == $"{active}.copy" ? step.Copy : null;
            if (kept is not null)
            {
                return Text(kept) is { Sort: Sort.Integer } branch ? _builder.Equal(_images.Reference[state.Variable], Is(branch, step.Value)) : null;
            }
        }

        return null;
    }

    /// <summary>
    /// The clock counts the scans that the fact has lasted, k, up to its limit; the timer counts from the scan of the
    /// edge and so has k - 1, and knows by itself whether k is 0.
    /// </summary>
    private Expression? OfTimer(StateVariable state)
    {
        if (state.Variable.Sort != Sort.Integer || _names.Image(state.Variable.Name) is not { } timer || Text($"{timer}.last") is not { } last)
        {
            return null;
        }

        Expression gone = Text($"{timer}.scans") ?? _builder.Constant(0);
        Expression lasted = _builder.Minimum(_builder.Add(gone, _builder.Constant(1)), _builder.Constant(state.Variable.Range.Maximum));
        return _builder.Equal(_images.Reference[state.Variable], _builder.IfThenElse(last, lasted, _builder.Constant(0)));
    }

    private IEnumerable<Expression> BranchCopies() => _block.Steps.Select(step => (step.Branch, step.Copy)).Distinct()
        .Where(pair => Text(pair.Branch) is not null && Text(pair.Copy) is not null)
        .Select(pair => _builder.Equal(Branch(pair.Copy), Branch(pair.Branch)));

    private IEnumerable<Expression> Branches() => _block.Steps.GroupBy(step => step.Branch).Where(group => Text(group.Key) is not null)
        .Select(group => _builder.Or([Is(Branch(group.Key), 0), .. group.Select(step => Is(Branch(group.Key), step.Value))]));

    /// <summary>Before a fork and behind a join one branch rests while the other is in such a step.</summary>
    private IEnumerable<Expression> BranchPairs() =>
        from first in _block.Steps
        from second in _block.Steps
        where first.Unit == second.Unit && string.CompareOrdinal(first.Branch, second.Branch) < 0 && Text(first.Branch) is not null && Text(second.Branch) is not null
        select _builder.Not(_builder.And(Is(Branch(first.Branch), first.Value), Is(Branch(second.Branch), second.Value)));

    /// <summary>In some procedural states no step is active.</summary>
    private IEnumerable<Expression> AtRest()
    {
        return _block.Steps.Select(step => step.Unit).Distinct().SelectMany(AtRest);
    }

    private IEnumerable<Expression> AtRest(string unit)
    {
        if (_names.Image($"{unit}.{ProceduralState}") is not { } name || Text(name) is not { Sort: Sort.Integer } state
            || state.Range.Maximum - state.Range.Minimum >= MostValues)
        {
            return [];
        }

        return from value in Enumerable.Range((int)state.Range.Minimum, (int)(state.Range.Maximum - state.Range.Minimum) + 1)
               from branch in _block.Steps.Where(step => step.Unit == unit).Select(step => step.Branch).Distinct()
               where Text(branch) is not null
               select _builder.Implies(Is(state, value), Is(Branch(branch), 0));
    }

    private Expression Is(Expression variable, long value) => _builder.Equal(variable, _builder.Constant(value));

    private Expression Branch(string name) => Text(name) ?? throw new InvalidOperationException($"the text has no {name}");

    private Expression? Text(string name) =>
        PairedNames.Find(_other.States, state => state.Variable.Name, name) is { } state ? _images.Other[state.Variable] : null;
}
