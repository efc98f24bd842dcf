using System.Collections.Immutable;
using Sequencer.Language.Programs;
using Sequencer.Text;

namespace Sequencer.Export.Writing;

/// <summary>
/// Where the clauses of a unit stand in its files. The list is in the head of the unit's block and nowhere else, so that a
/// line put in or taken out of a program changes that list and not every comment behind it.
/// </summary>
internal static class ClausePlaces
{
    /// <summary>Clauses by the name that the text calls them.</summary>
    public static ImmutableArray<(string Name, SourceSpan Span)> Of(UnitProgram unit) =>
    [
        .. unit.AnalogueInputs.Select(one => (one.Tag, one.Span)),
        .. unit.SwitchInputs.Select(one => (one.Tag, one.Span)),
        .. unit.Outputs.Select(one => (one.Tag, one.Span)),
        .. unit.AnalogueOutputs.Select(one => (one.Tag, one.Span)),
        .. unit.Parameters.Select(one => (one.Name, one.Span)),
        .. unit.Latches.Select(one => (one.Name, one.Span)),
        .. unit.Counts.Select(one => (one.Name, one.Span)),
        .. unit.Votes.Select(one => (one.Name, one.Span)),
        .. unit.Facts.Select(one => (one.Name, one.Span)),
        .. unit.Interlocks.Select(one => (one.Name, one.Span)),
        .. unit.Exclusions.Select(one => (one.Name, one.Span)),
        .. unit.Pairs.Select(one => (one.Name, one.Span)),
        .. unit.Shared.Select(one => (one.Name, one.Span)),
        .. unit.Permissives.Select(one => (one.Name, one.Span)),
        .. unit.Trips.Select(one => (one.Name, one.Span)),
        .. unit.Alarms.Select(one => (one.Name, one.Span)),
        .. unit.Assumptions.Select(one => (one.Name, one.Span)),
        .. unit.Requirements.Select(one => (one.Name, one.Span)),
        .. unit.Steps.Select(one => (FormattableString.Invariant($"step {one.Number}"), one.Span)),
    ];

    /// <summary>The files that the unit was read from, its own first.</summary>
    public static ImmutableArray<SourceText> Files(UnitProgram unit) =>
    [
        .. Of(unit).Select(clause => clause.Span.Written.Source).Prepend(unit.Span.Written.Source).DistinctBy(source => source.Path),
    ];

    /// <summary>One line a file, and for a module one a use: <c>pit.seq: 7 AT301, 8 TT301</c>.</summary>
    public static IEnumerable<string> Words(UnitProgram unit) =>
        from clause in Of(unit)
        group clause by FileAndUse(clause.Span) into file
        select $"{file.Key}: {string.Join(", ", file.OrderBy(clause => clause.Span.Start.Line).Select(clause => FormattableString.Invariant($"{clause.Span.Start.Line} {clause.Name}")))}";

    private static string FileAndUse(SourceSpan span) =>
        Path.GetFileName(span.Source.Path) + (span.Source.Use is { } use ? $" for {use.Name}" : "");
}
