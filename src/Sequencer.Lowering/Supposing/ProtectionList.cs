using System.Collections.Immutable;
using Sequencer.Language.Programs;

namespace Sequencer.Lowering.Supposing;

/// <summary>The protections of a site that can be taken out one by one, unit by unit, each kind in written order.</summary>
public static class ProtectionList
{
    public static ImmutableArray<Protection> Of(SiteProgram site) => [.. site.Units.SelectMany(unit => Of(site, unit))];

    /// <summary>The name of an output's batch maximum.</summary>
    internal static string Maximum(string tag) => $"{tag}.maximum";

    /// <summary>The name of the supervision of an output's device.</summary>
    internal static string Confirmation(string tag) => $"{tag}.confirm";

    /// <summary>The name of a start condition, counted from 1.</summary>
    internal static string Start(string unit, int number) => FormattableString.Invariant($"{unit}.start{number}");

    private static IEnumerable<Protection> Of(SiteProgram site, UnitProgram unit) =>
    [
        .. unit.Interlocks.Select(one => new Protection(site.NameOf(unit, one.Name), unit.Name, ProtectionKind.Interlock, one.Title, one.Span)),
        .. unit.Exclusions.Select(one => new Protection(site.NameOf(unit, one.Name), unit.Name, ProtectionKind.Exclusion, one.Title, one.Span)),
        .. unit.Permissives.Select(one => new Protection(site.NameOf(unit, one.Name), unit.Name, ProtectionKind.Permissive, one.Title, one.Span)),
        .. unit.Trips.Select(one => new Protection(site.NameOf(unit, one.Name), unit.Name, ProtectionKind.Trip, one.Title, one.Span)),
        .. unit.Outputs.Where(output => QuantityMeasure.LargestDose(unit, output, site.ScanMilliseconds) is not null)
            .Select(output => new Protection(Maximum(output.Tag), unit.Name, ProtectionKind.BatchMaximum, $"The most that {output.Tag} may give in a batch", output.Span)),
        .. unit.Outputs.Where(output => output.Confirmation is not null)
            .Select(output => new Protection(Confirmation(output.Tag), unit.Name, ProtectionKind.Confirmation, $"{output.Tag} is supervised by its switches", output.Span)),
        .. unit.StartConditions.Select((one, index) =>
            new Protection(Start(unit.Name, index + 1), unit.Name, ProtectionKind.StartCondition, one.Message, one.Span)),
    ];
}
