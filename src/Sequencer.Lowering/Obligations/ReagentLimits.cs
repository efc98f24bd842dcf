using Sequencer.Control.TransitionSystems;
using Sequencer.Language.Programs;
using Sequencer.Text;

namespace Sequencer.Lowering.Obligations;

/// <summary>No batch is given more of a reagent than its doses may, whoever asks for it, and reagents that oppose each other are never given at once.</summary>
internal static class ReagentLimits
{
    public static void Add(UnitScan scan)
    {
        foreach (Output output in scan.Unit.Outputs)
        {
            AtMost(scan, output);
        }

        Output[] delivering = [.. scan.Unit.Outputs.Where(output => output.Delivery is not null)];
        foreach (Output first in delivering)
        {
            foreach (Output second in delivering.Where(other => string.CompareOrdinal(first.Tag, other.Tag) < 0 && Opposed(first, other)))
            {
                Apart(scan, first, second);
            }
        }
    }

    private static void AtMost(UnitScan scan, Output output)
    {
        if (output.Delivery is not { } delivery || QuantityMeasure.LargestDose(scan.Unit, output, scan.ScanMilliseconds) is not { } most)
        {
            return;
        }

        StandardObligations.Require(
            scan, $"{output.Tag}.maximum", "no batch has more of a reagent than its doses may give", $"{delivery.Reagent.Name} of a batch at most its maximum",
            FormattableString.Invariant($"never {output.Tag}.total > {most} scans of delivery"), RequirementKind.Never,
            scan.Build.LessOrEqual(scan.Total(output), scan.Build.Constant(most)), new Origin(output.Span));
    }

    private static void Apart(UnitScan scan, Output first, Output second) => StandardObligations.Require(
        scan, $"{first.Tag}.{second.Tag}.apart",
        "reagents that oppose are never given at once", $"{first.Delivery?.Reagent.Name} and {second.Delivery?.Reagent.Name} are never given at once",
        $"never {first.Tag} and {second.Tag}", RequirementKind.Never,
        scan.Build.Not(scan.Build.And(scan.Final(first), scan.Final(second))), new Origin(first.Delivery!.Span));

    private static bool Opposed(Output first, Output second) =>
        first.Delivery!.Reagent.Opposes.Contains(second.Delivery!.Reagent.Name) || second.Delivery.Reagent.Opposes.Contains(first.Delivery.Reagent.Name);
}
