using Sequencer.Control.Traces;
using Sequencer.Control.TransitionSystems;
using Sequencer.Proof.Leads;
using Sequencer.Proof.Reaching;
using Sequencer.Proof.Satisfiability;
using Sequencer.Proof.Slicing;

namespace Sequencer.Proof.Insight;

/// <summary>
/// Failing runs that begin like runs that are known. What lies deep in a procedure is a few scans away from a run that has got
/// there already, and many thousands from the beginning.
/// </summary>
public static class Continuation
{
    private const string Engine = "known runs";

    /// <summary>Looks from every place where a known run changes its inputs, and from just before its end, a few scans ahead.</summary>
    /// <param name="system">Its inputs are those of the system that the runs were found in; all else may differ.</param>
    /// <param name="requirement">One of the system's.</param>
    /// <param name="known">Runs to begin with; where they break this system's assumptions they are left.</param>
    /// <param name="options">The budget.</param>
    /// <param name="cancellation">Ends the search.</param>
    /// <returns>A replayed run that breaks the requirement in its last scan, or null: nothing is proved by that.</returns>
    /// <exception cref="OperationCanceledException">The caller gave up.</exception>
    public static Fails? FailingRun(
        TransitionSystem system, Requirement requirement, IEnumerable<Trace> known, ProofOptions options, CancellationToken cancellation)
    {
        Budget budget = new(options.Conflicts, cancellation) { MostPropagations = options.Propagations };
        Slice slice = Slicer.Cut(system, requirement, AssumptionScope.Related);
        Expression[] assumed = [.. system.Assumptions.Select(assumption => assumption.Holds)];
        try
        {
            Outlook outlook = new(slice, budget);
            foreach (Trace beginning in known.Select(slice.Narrow))
            {
                if (outlook.From(beginning) is not { } failing)
                {
                    continue;
                }

                Trace wide = slice.Widen(TraceShortener.Shorten(slice.System, slice.Builder, failing, false, budget.ThrowIfCancelled));
                if (TraceReplay.FailsInLastScan(system, wide, requirement.Holds, assumed, budget))
                {
                    Effort effort = new(budget.Queries, budget.Conflicts, budget.Decisions, budget.Propagations, slice.System.States.Length, 0, 0);
                    return new Fails(requirement.Name, wide, Engine, false, effort);
                }
            }
        }
        catch (BudgetSpentException)
        {
            return null;
        }

        return null;
    }
}
