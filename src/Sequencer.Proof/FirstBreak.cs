using System.Collections.Immutable;
using Sequencer.Control.TransitionSystems;
using Sequencer.Proof.BitBlasting;

namespace Sequencer.Proof;

/// <summary>
/// The first scan that breaks facts by which some states are given by others. Up to it the states that are given need no place: what
/// is left is a smaller system, and that no scan breaks the facts is a requirement of it. A run that fails it is one of the whole
/// system too; an invariant of it says of the whole system what the facts lacked.
/// </summary>
internal sealed class FirstBreak
{
    private const string Parting = "parting";

    private readonly ExpressionBuilder _wholeBuilder;
    private readonly ImmutableArray<Variable> _left;

    /// <param name="whole">A system with one requirement and no assumptions. Its goals lead the search.</param>
    /// <param name="gap">What may be broken.</param>
    /// <param name="alike">What says the same of a scan as that it breaks none of that, where something shorter is known.</param>
    /// <param name="builder">The builder of its expressions.</param>
    public FirstBreak(TransitionSystem whole, FactsGap gap, AlikeScan? alike, ExpressionBuilder builder)
    {
        _wholeBuilder = builder;
        DefinedStates defined = new(gap.Facts);
        ImmutableArray<StateVariable> left = [.. whole.States.Where(state => !defined.Contains(state.Variable))];
        _left = [.. left.Select(state => state.Variable)];
        ExpressionBuilder own = new();
        Dictionary<Variable, Expression> images = [];
        foreach (Variable input in whole.Inputs)
        {
            images.Add(input, own.Variable(input));
        }

        ImmutableArray<Variable> places = [.. _left.Select((variable, index) => variable with { Index = index })];
        for (int index = 0; index < places.Length; index++)
        {
            images.Add(_left[index], own.Variable(places[index]));
        }

        foreach ((Variable state, Expression value) in defined.InOrder)
        {
            images.Add(state, own.Substitute([value], images)[0]);
        }

        IReadOnlyList<Expression> next = own.Substitute([.. whole.States.Select(state => state.Next)], images);
        Dictionary<Variable, Expression> after = whole.States.ToDictionary(state => state.Variable, state => next[state.Variable.Index]);
        Expression[] rest = [.. gap.Facts.Where(fact => !defined.Used.Contains(fact))];
        Expression[] required = alike is null ? [.. gap.Required] : [alike.Same];
        ImmutableArray<Goal> goals = alike is null ? whole.Goals : whole.Goals.Add(
            new Goal(Parting, string.Empty, Parting, builder.Not(alike.Enough), [], builder.True, whole.Requirements[0].Origin));
        IReadOnlyList<Expression> now = own.Substitute([.. required, .. rest, .. goals.Select(goal => goal.Reached), .. goals.Select(goal => goal.Meanwhile)], images);
        int before = required.Length + rest.Length;
        Requirement requirement = whole.Requirements.Single() with
        {
            Holds = own.And([.. now.Take(required.Length), .. alike is null ? own.Substitute(gap.Broken, after) : []]),
            Guesses = [.. now.Skip(required.Length).Take(rest.Length)],
        };
        System = TransitionSystem.Create(
            whole.Name,
            whole.ScanMilliseconds,
            whole.Inputs,
            [.. left.Select((state, index) => state with { Variable = places[index], Next = next[state.Variable.Index] })],
            [],
            [],
            [],
            [requirement],
            [],
            [.. goals.Select((goal, index) => goal with { Reached = now[before + index], Meanwhile = now[before + goals.Length + index] })]);
    }

    /// <summary>Its inputs are those of the whole system.</summary>
    public TransitionSystem System { get; }

    public Requirement Requirement => System.Requirements[0];

    /// <summary>What an invariant of the smaller system says of the whole one, part by part.</summary>
    public ImmutableArray<Expression> InWhole(Expression invariant)
    {
        Dictionary<Variable, Expression> back = System.States.ToDictionary(state => state.Variable, state => _wholeBuilder.Variable(_left[state.Variable.Index]));
        return InvariantCheck.Conjuncts(_wholeBuilder.Substitute([invariant], back)[0]);
    }
}
