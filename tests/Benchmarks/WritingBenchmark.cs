using System.Security.Cryptography;
using System.Text;
using Sequencer.Export.Writing;
using Sequencer.Language.Checking;
using Sequencer.Language.Programs;
using Sequencer.Sites;
using Sequencer.Sites.Folders;
using Sequencer.Testing;
using Sequencer.Text;

namespace Sequencer.Benchmarks;

/// <summary>
/// From checked programs to structured text, without reading it back or proving anything; SHA-256 of the same text is the
/// comparison. Times are of the processor, all threads together, so that other work on the machine counts less. The first time is what a
/// command pays, which writes once and is compiled while it does.
/// </summary>
internal sealed class WritingBenchmark : Benchmark
{
    private const int ScanMilliseconds = 100;
    private const int Lines = 5_000;
    private const int Repeats = 9;

    public override string Name => "writing";

    public override IEnumerable<Figure> Run() =>
    [
        .. Of("marlpit-wharf", SiteLoader.Load(new SiteFolder(RepositoryPath.Site("marlpit-wharf")), new DiagnosticBag())?.Programs ?? throw new InvalidOperationException("the site does not check")),
        .. Of("20 units", Generated(20)),
        .. Of("1 unit", Generated(1)),
    ];

    private static SiteProgram Generated(int units)
    {
        SiteCheckResult result = SiteChecker.Check(LongSite.Of(Lines, units), ScanMilliseconds);
        return result.Units.Length == units
            ? new SiteProgram("long", ScanMilliseconds, result.Units)
            : throw new InvalidOperationException(DiagnosticRenderer.Render(result.Diagnostics));
    }

    private static IEnumerable<Figure> Of(string name, SiteProgram site)
    {
        ExportHeader header = new(name, "A", "none");
        string text = "";
        double first = Milliseconds(() => text = StructuredTextWriter.Write(site, header).Text);
        byte[] bytes = Encoding.UTF8.GetBytes(text);
        string size = FormattableString.Invariant($"{name}, {text.Count(letter => letter == '\n')} lines: ");
        yield return new Figure(size + "SHA-256 (baseline)", Middle(() => GC.KeepAlive(SHA256.HashData(bytes))), "ms");
        yield return new Figure(size + "writing, first time", first, "ms");
        yield return new Figure(size + "writing", Middle(() => GC.KeepAlive(StructuredTextWriter.Write(site, header))), "ms");
        yield return new Figure(size + "with short names", Middle(() => GC.KeepAlive(StructuredTextWriter.Write(site, header, TextDialect.Default with { LongestName = 24 }))), "ms");
    }

    private static double Middle(Action work) => Enumerable.Range(0, Repeats).Select(_ => Milliseconds(work)).Order().ElementAt(Repeats / 2);

    private static double Milliseconds(Action work)
    {
        TimeSpan before = Environment.CpuUsage.TotalTime;
        work();
        return (Environment.CpuUsage.TotalTime - before).TotalMilliseconds;
    }
}
