using System.Collections.Immutable;
using System.Text.RegularExpressions;
using Sequencer.Testing;
using Sequencer.Text;

namespace Sequencer.Language.Tests.Corpus;

/// <summary>
/// A program of <c>Corpus/Faulty</c> with one mistake. A comment below the faulty line marks the span with
/// carets and names the code: <c>--     ^^^^ SEQ0201</c>. <c>--&lt;^^^</c> marks from the margin on, hyphens
/// included; in place of the carets <c>|</c> marks the empty span before its column, <c>$</c> the end of the
/// file. A first line such as <c>-- F47: …</c> names the failure mode of spec/failure-modes.md that the
/// mistake leads to.
/// </summary>
internal sealed partial record FaultyProgram(string Name, SourceText Source, string Code, TextSpan Span, string? Mode)
{
    public static ImmutableArray<FaultyProgram> All { get; } =
        [.. Files("Faulty").Select(file => Read(Path.GetFileNameWithoutExtension(file), File.ReadAllText(file)))];

    /// <summary>The programs of one folder of the corpus, in the order of their names.</summary>
    public static ImmutableArray<string> Files(string folder) =>
        [.. Directory.GetFiles(RepositoryPath.At("tests", "Sequencer.Language.Tests", "Corpus", folder), "*.seq").Order(StringComparer.Ordinal)];

    public override string ToString() => Name;

    private static FaultyProgram Read(string name, string content)
    {
        int above = 0;
        int start = 0;
        (string Code, TextSpan Span)? marked = null;
        foreach (string line in content.Split('\n'))
        {
            Match mark = Mark().Match(line);
            if (!mark.Success)
            {
                above = start;
            }
            else
            {
                Assert.True(marked is null, $"{name}: two marks");
                Group carets = mark.Groups["carets"];
                int from = mark.Groups["margin"].Success ? 0 : carets.Index;
                marked = (mark.Groups["code"].Value, carets.Value switch
                {
                    "$" => new TextSpan(content.Length, 0),
                    "|" => new TextSpan(above + from, 0),
                    _ => new TextSpan(above + from, carets.Index + carets.Length - from),
                });
            }

            start += line.Length + 1;
        }

        Assert.True(marked is not null, $"{name}: no mark");
        Match mode = ModeNamed().Match(content);
        return new FaultyProgram(name, new SourceText(name + ".seq", content), marked.Value.Code, marked.Value.Span, mode.Success ? mode.Groups["mode"].Value : null);
    }

    [GeneratedRegex(@"^--(?<margin><)? *(?<carets>\^+|\||\$) (?<code>SEQ\d{4})$")]
    private static partial Regex Mark();

    [GeneratedRegex(@"^-- (?<mode>F\d\d): ")]
    private static partial Regex ModeNamed();
}
