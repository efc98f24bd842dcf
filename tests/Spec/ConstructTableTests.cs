using System.Text.RegularExpressions;

namespace Sequencer.Spec.Tests;

/// <summary>The table of <c>spec/constructs.md</c>: every example of a row stands in the program below it.</summary>
public sealed partial class ConstructTableTests
{
    private static FencedBlock Program { get; } = Documents.Blocks.Single(block => block.Path == "spec/constructs.md" && block.Tag == "seq clean");

    private static IReadOnlyList<Match> Rows { get; } = [.. Row().Matches(File.ReadAllText(Testing.RepositoryPath.At("spec", "constructs.md"))).Cast<Match>()];

    [Fact]
    public void The_rows_are_numbered_without_a_gap() => Assert.Equal(Enumerable.Range(1, 38), Rows.Select(row => int.Parse(row.Groups["number"].ValueSpan)));

    [Fact]
    public void Each_example_stands_in_the_program_and_a_row_without_one_says_what_is_missing_or_where_it_is_shown()
    {
        string program = Squeezed(Program.Text);
        Assert.All(Rows, row =>
        {
            string example = row.Groups["example"].Value;
            if (example.Length > 0)
            {
                Assert.Contains(Squeezed(example), program, StringComparison.Ordinal);
            }
            else
            {
                Assert.Matches("not yet|\\.md#", row.Groups["words"].Value);
            }
        });
    }

    private static string Squeezed(string text) => Blanks().Replace(text, " ");

    [GeneratedRegex(@"^\| (?<number>\d+) \| [^|]+ \| (?<words>[^|]+) \| (?:`(?<example>[^`|]+)`|–) \|", RegexOptions.Multiline)]
    private static partial Regex Row();

    [GeneratedRegex(" +")]
    private static partial Regex Blanks();
}
