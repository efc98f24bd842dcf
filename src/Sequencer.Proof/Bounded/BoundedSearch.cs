using Sequencer.Control.Traces;
using Sequencer.Control.TransitionSystems;
using Sequencer.Proof.BitBlasting;
using Sequencer.Proof.Runs;
using Sequencer.Proof.Satisfiability;

namespace Sequencer.Proof.Bounded;

/// <summary>
/// Unrolls scan after scan from the initial state and asks whether the latest can break the requirement:
/// the first such scan ends a shortest failing run.
/// </summary>
internal static class BoundedSearch
{
    /// <summary>The shortest failing run of at most <paramref name="scans"/> scans, null if there is none.</summary>
    public static Trace? Find(TransitionSystem system, int scans, Budget budget, Action<int> reportScans)
    {
        Solver solver = new(budget);
        Circuit circuit = new(solver);
        List<Scan> unrolled = [];
        for (int count = 1; count <= scans; count++)
        {
            reportScans(count);
            unrolled.Add(count == 1 ? Scan.First(circuit, system) : unrolled[^1].Following());
            foreach (Assumption assumption in system.Assumptions)
            {
                solver.AddClause(unrolled[^1].Encoding.Boolean(assumption.Holds));
            }

            if (solver.Solve(!unrolled[^1].Encoding.Boolean(system.Requirements[0].Holds)))
            {
                return Read(unrolled);
            }
        }

        return null;
    }

    private static Trace Read(List<Scan> unrolled)
    {
        List<TraceSegment> segments = [];
        foreach (Scan scan in unrolled)
        {
            SearchRun.Append(segments, scan.ModelInputs(), 1);
        }

        return new Trace([.. segments]);
    }
}
