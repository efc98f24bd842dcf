using System.Collections.Immutable;
using System.Text.RegularExpressions;
using Sequencer.Testing;

namespace Sequencer.Language.Tests.Corpus;

/// <summary>The table of spec/failure-modes.md against the corpus and the pages of the codes.</summary>
public sealed partial class FailureModeTests
{
    private static readonly ImmutableArray<(string Mode, string FoundBy)> Rows =
    [
        .. File.ReadLines(RepositoryPath.At("spec", "failure-modes.md"))
            .Select(line => Row().Match(line)).Where(match => match.Success)
            .Select(match => (match.Groups["mode"].Value, match.Groups["by"].Value)),
    ];

    [Fact]
    public void The_modes_are_numbered_through_and_each_says_what_finds_it()
    {
        Assert.Equal(Enumerable.Range(1, 64).Select(number => $"F{number:00}"), Rows.Select(row => row.Mode));
        Assert.All(Rows, row => Assert.Matches("SEQ|prover|simulation|cannot be written|not yet: ", row.FoundBy));
    }

    [Fact]
    public void Every_code_of_the_table_has_a_page() => Assert.All(
        Rows.SelectMany(row => Codes(row.FoundBy)),
        code => Assert.True(File.Exists(RepositoryPath.At("spec", "diagnostics", code + ".md")), code));

    [Fact]
    public void Every_code_of_a_row_has_a_program_of_that_mode_and_every_mode_of_a_program_its_row()
    {
        string[] promised = [.. Rows.SelectMany(row => Codes(row.FoundBy).Select(code => $"{row.Mode} {code}")).Order(StringComparer.Ordinal)];
        string[] shown = [.. FaultyProgram.All.Where(program => program.Mode is not null).Select(program => $"{program.Mode} {program.Code}").Distinct().Order(StringComparer.Ordinal)];

        Assert.True(promised.Length > 40, "too few codes were found in the table");
        Assert.Equal(promised, shown);
    }

    private static IEnumerable<string> Codes(string text) => Code().Matches(text).Select(match => match.Value);

    [GeneratedRegex(@"^\| (?<mode>F\d\d) \| [^|]+ \| (?<by>[^|]+) \|$")]
    private static partial Regex Row();

    [GeneratedRegex(@"SEQ\d{4}")]
    private static partial Regex Code();
}
