using System.Collections.Immutable;
using Sequencer.Control.TransitionSystems;
using Sequencer.Export.Writing;
using Sequencer.Proof;
using Sequencer.StructuredText;
using Sequencer.Text;

namespace Sequencer.Export.Wiring;

/// <summary>
/// Whether the program around the blocks hands them the signals that the site declares, from their addresses, and brings out what they say.
/// With a block that is equal to its programs (<see cref="Equivalence.TextEquality"/>) the whole text then does what the programs do.
/// </summary>
public static class WiringCheck
{
    private const int MostFaults = 20;

    /// <param name="export">The signals of the site, and its block, with the names that the text has.</param>
    /// <param name="systems">What a reader made of that block by itself.</param>
    /// <param name="text">The whole text, read without errors.</param>
    /// <param name="scanMilliseconds">How long a scan of the programs is.</param>
    /// <param name="options">The budget, where the block is not used as it stands.</param>
    /// <param name="cancellation">Makes the result undecided.</param>
    public static WiringResult Decide(
        StructuredTextExport export, ImmutableArray<TransitionSystem> systems, SourceText text, int scanMilliseconds, ProofOptions options, CancellationToken cancellation)
    {
        (SiteWiring site, ExportedBlock block, TransitionSystem read) = (export.Wiring, export.Blocks.Single(), systems.Single());
        ReadingResult whole = StructuredTextReader.Read(text, new ReadingOptions(null, scanMilliseconds), cancellation);
        if (whole.System is null)
        {
            return new WiringUndecided($"the program around the blocks cannot be read: {whole.Diagnostics.First(one => one.Severity == Severity.Error).Message}");
        }

        if (CalledBlock.Find(whole.System, read, new ExpressionBuilder()) is not { } called)
        {
            return new WiringUndecided($"no program of the text calls {block.FunctionBlock}");
        }

        List<string> faults = [];
        if (whole.System.ScanMilliseconds != scanMilliseconds)
        {
            faults.Add(FormattableString.Invariant($"the task calls the program every {whole.System.ScanMilliseconds} ms; a scan of the programs is {scanMilliseconds} ms"));
        }

        PointCheck points = new(called, whole.System, whole.Addresses, block, site.Points);
        foreach (WiredPoint point in site.Points)
        {
            cancellation.ThrowIfCancellationRequested();
            faults.AddRange(points.Faults(point));
        }

        faults.AddRange(points.Operated(site.Operated));
        faults.AddRange(points.Strangers(site.Points));
        if (faults.Count > 0)
        {
            return new WiredOtherwise([.. faults.Take(MostFaults)]);
        }

        if (called.Differences(out string? missing) is not { } differences)
        {
            return new WiringUndecided($"`{missing}` of {block.FunctionBlock} is not used in the program as in the block itself");
        }

        (string Name, Expression Same)[] open = [.. differences, .. points.Open];
        return (open.Length == 0 ? null : Prove(called, open, options, cancellation))
            ?? new WiredAsDeclared(site.Points.Length, site.Operated.Length, LoopTrial.Counts);
    }

    /// <summary>Where something is worked out in other words than ours it may be the same all the same. Null where it is.</summary>
    private static WiringResult? Prove(CalledBlock called, (string Name, Expression Same)[] open, ProofOptions options, CancellationToken cancellation)
    {
        foreach ((string name, Expression same) in open)
        {
            Requirement requirement = new(name, name, name, RequirementKind.Never, same, called.Origin);
            switch (Prover.Decide(called.WithRequirement(requirement), requirement, options, null, cancellation))
            {
                case Holds:
                    break;
                case Fails fails:
                    return new WiredOtherwise([FormattableString.Invariant($"`{name}`: a run was found in whose scan {fails.Trace.Scans} it is not what the block and the site's signals make it")]);
                default:
                    return new WiringUndecided($"`{name}` is worked out in another way than ours");
            }
        }

        return null;
    }
}
