using System.Collections.Immutable;
using Sequencer.Control.TransitionSystems;
using Sequencer.Proof.Slicing;

namespace Sequencer.Proof.Certificates;

/// <summary>
/// The equations that a certificate is written in. Where the requirement can depend on settled states (<see cref="SettledStates"/>), these
/// are put in, and other certificates show that they may be: those of the requirements that say nothing more once they are.
/// Such a requirement is certified in the equations as they stand.
/// </summary>
internal sealed class CertifiedSystem
{
    private readonly ImmutableArray<SettledState> _needed;

    private CertifiedSystem(TransitionSystem whole, TransitionSystem system, Requirement requirement, ImmutableArray<SettledState> needed)
    {
        Whole = whole;
        System = system;
        Requirement = requirement;
        _needed = needed;
    }

    /// <summary>As it was lowered.</summary>
    public TransitionSystem Whole { get; }

    public TransitionSystem System { get; }

    public Requirement Requirement { get; }

    public bool IsPut => System != Whole;

    public static CertifiedSystem Of(TransitionSystem whole, Requirement requirement)
    {
        SettledStates settled = whole.Settled;
        if (Slicer.Settled(whole, requirement).Count == 0)
        {
            return new CertifiedSystem(whole, whole, requirement, []);
        }

        Expression put = settled.Put(requirement.Holds)[0];
        return put.IsTrue
            ? new CertifiedSystem(whole, whole, requirement, Needed(whole, requirement))
            : new CertifiedSystem(whole, settled.Rest, requirement with { Holds = put }, []);
    }

    /// <summary>The invariant of the whole system in these equations.</summary>
    public Expression Invariant(Expression invariant)
    {
        if (IsPut)
        {
            return Whole.Settled.Put(invariant)[0];
        }

        if (_needed.IsEmpty)
        {
            return invariant;
        }

        ImmutableArray<Expression> parts = InvariantCheck.Conjuncts(invariant);
        ImmutableArray<Expression> put = Whole.Settled.Put(parts);
        ExpressionBuilder build = new();
        IEnumerable<Expression> found = parts.Where((_, index) => !put[index].IsTrue);
        return build.And([.. build.Substitute([.. found], new Dictionary<Variable, Expression>()), .. _needed.Select(state => state.Fact(build))]);
    }

    /// <summary>The system's assumptions as they stand in these equations.</summary>
    public ImmutableArray<Assumption> Assumptions(ImmutableArray<Assumption> leanedOn) =>
        [.. System.Assumptions.Where((_, index) => leanedOn.Contains(Whole.Assumptions[index]))];

    /// <summary>The settled states that the requirement reads, and those that these are settled by: a constant by what its next value reads.</summary>
    private static ImmutableArray<SettledState> Needed(TransitionSystem whole, Requirement requirement)
    {
        Dictionary<Variable, SettledState> settled = whole.Settled.All.ToDictionary(state => state.Variable);
        HashSet<SettledState> needed = [];
        Stack<Variable> open = new(ExpressionGraph.Variables([requirement.Holds]));
        while (open.TryPop(out Variable? variable))
        {
            if (settled.TryGetValue(variable, out SettledState? state) && needed.Add(state) && state.Twin is null)
            {
                foreach (Variable read in whole.ReadByNext[variable.Index])
                {
                    open.Push(read);
                }
            }
        }

        return [.. needed.OrderBy(state => state.Variable.Index)];
    }
}
