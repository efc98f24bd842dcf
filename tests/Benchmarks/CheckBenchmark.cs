using System.Diagnostics;
using Sequencer.Language.Checking;
using Sequencer.Language.Parsing;
using Sequencer.Testing;
using Sequencer.Text;

namespace Sequencer.Benchmarks;

/// <summary>Text to checked program, all of it and again after an edit; cutting the text into words is the comparison.</summary>
internal sealed class CheckBenchmark : Benchmark
{
    private const int ScanMilliseconds = 100;
    private const int Units = 20;
    private const int LinesOfSite = 5_000;
    private const int LongestLines = 100_000;

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

        foreach (Figure figure in OfSite(LongSite.Of(LinesOfSite, Units)))
        {
            yield return figure;
        }

        string longest = LongProgram.Of(template, LongestLines);
        Stopwatch watch = Stopwatch.StartNew();
        Check(longest, new ParseCache());
        yield return new Figure(FormattableString.Invariant($"{LongestLines} lines: parsing and checking (once)"), watch.Elapsed.TotalMilliseconds, "ms");
    }

    private static IEnumerable<Figure> OfSite(SourceText[] site)
    {
        string size = FormattableString.Invariant($"{site.Sum(unit => unit.LineCount)} lines in {Units} units: ");
        yield return new Figure(size + "cutting into words (baseline)", Median.Milliseconds(() => Array.ForEach(site, unit => GC.KeepAlive(unit.Content.Split([' ', '\n'])))), "ms");
        yield return new Figure(size + "parsing and checking", Median.Milliseconds(() => Check(site, new ParseCache())), "ms");
        ParseCache cache = new();
        int edit = 0;
        yield return new Figure(size + "again after one changed line", Median.Milliseconds(() => Check([new SourceText(site[0].Path, Edited(site[0].Content, ++edit)), .. site.Skip(1)], cache)), "ms");
    }

    private static void Check(IReadOnlyList<SourceText> site, ParseCache cache)
    {
        if (SiteChecker.Check(site, ScanMilliseconds, cache: cache) is { Files: var files } && files.FirstOrDefault(file => file.HasErrors) is { } wrong)
        {
            throw new InvalidOperationException(DiagnosticRenderer.Render(wrong.Diagnostics));
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
