using System.Collections.Immutable;
using Sequencer.Plant.Yaml;
using Sequencer.Text;

namespace Sequencer.Plant.Description;

/// <summary>What feeders move, as flows: so many kilograms of a powder whose litre of grains holds so many grams.</summary>
internal static class FedPowder
{
    private const double GramsPerKilogram = 1000.0;

    /// <summary>The lines with the flow of those that have a feeder; reports one that feeds no powder.</summary>
    public static ImmutableArray<LineDescription> Rates(
        ImmutableArray<LineDescription> lines, ImmutableArray<DriveDescription> drives, ImmutableArray<ReagentDescription> reagents, DiagnosticBag diagnostics) =>
        [.. lines.Select(line => drives.FirstOrDefault(drive => drive.Kind == DriveKind.Feeder && line.Through.Contains(drive.Tag)) is { } feeder
            ? Fed(line, feeder, reagents, diagnostics)
            : line)];

    private static LineDescription Fed(LineDescription line, DriveDescription feeder, ImmutableArray<ReagentDescription> reagents, DiagnosticBag diagnostics)
    {
        if (reagents.FirstOrDefault(reagent => reagent.Name == line.From) is { FilterAidGramsPerLitre: > 0.0 } powder)
        {
            return line with { RateLitresPerSecond = feeder.GivesKilogramsPerSecond * GramsPerKilogram / powder.FilterAidGramsPerLitre };
        }

        diagnostics.Add(PlantDiagnostics.UnknownName(
            new Placed<string>(line.From, line.Span),
            $"powder (a reagent with `filter_aid`) for `{feeder.Tag}`",
            reagents.Where(reagent => reagent.FilterAidGramsPerLitre > 0.0).Select(reagent => reagent.Name)));
        return line;
    }
}
