using Sequencer.Language.Checking;
using Sequencer.Language.Parsing;
using Sequencer.Testing;
using Sequencer.Text;

namespace Sequencer.Benchmarks;

/// <summary>Text to checked program, all of it and again after an edit; cutting the text into words is the comparison.</summary>
internal sealed class CheckBenchmark : Benchmark
{
    private const int ScanMilliseconds = 100;

    public override string Name => "check";

    public override IEnumerable<Figure> Run()
    {
        string template = File.ReadAllText(RepositoryPath.At("src", "Sequencer.Sites", "Template", "program.seq"));
        foreach (int lines in (int[])[2_000, 20_000])
        {
            string text = LongProgram.Of(template, lines);
            string size = FormattableString.Invariant($"{lines} lines: ");
            yield return new Figure(size + "cutting into words (baseline)", Median.Milliseconds(() => GC.KeepAlive(text.Split([' ', '\n']))), "ms");
            yield return new Figure(size + "parsing and checking", Median.Milliseconds(() => Check(text, new ParseCache())), "ms");
            ParseCache cache = new();
            int edit = 0;
            yield return new Figure(size + "again after one changed line", Median.Milliseconds(() => Check(Edited(text, ++edit), cache)), "ms");
        }
    }

    private static string Edited(string text, int edit) =>
        text.Replace("\"Slow in part 7\"", FormattableString.Invariant($"\"Slow, edit {edit}\""), StringComparison.Ordinal);

    private static void Check(string text, ParseCache cache)
    {
        if (ProgramChecker.Check(new SourceText("long.seq", text), ScanMilliseconds, cache).HasErrors)
        {
            throw new InvalidOperationException("the long program has mistakes");
        }
    }
}
