using System.Collections.Immutable;
using System.Diagnostics;
using System.Globalization;
using System.Text.RegularExpressions;
using Sequencer.Control.TransitionSystems;
using Sequencer.Language.Checking;
using Sequencer.Language.Programs;
using Sequencer.Lowering;
using Sequencer.Proof;
using Sequencer.Sites;
using Sequencer.Sites.Folders;
using Sequencer.Testing;
using Sequencer.Text;

namespace Sequencer.Benchmarks;

/// <summary>
/// Every demo site as it is, and with the limit of every step, the range of every reading and the range of every parameter
/// doubled (but for pH and set points of redox, above which requirements are false, and for limits of weeks, which may not be longer): a proof that counts ticks or values would take twice as long.
/// </summary>
internal sealed partial class DoublingBenchmark : Benchmark
{
    public override string Name => "doubling";

    public override IEnumerable<Figure> Run()
    {
        // The first proof pays for compiling the prover.
        Prove("quillgate", text => text);
        foreach (string site in (Environment.GetEnvironmentVariable("SITES") ?? "fernhollow marlpit-wharf quillgate sedgemere").Split(' '))
        {
            (double asIs, int held) = Prove(site, text => text);
            (double doubled, int heldDoubled) = Prove(site, Doubled);
            yield return new Figure(FormattableString.Invariant($"{site}: {held} hold"), asIs, "s");
            yield return new Figure(FormattableString.Invariant($"{site}, doubled: {heldDoubled} hold"), doubled, "s");
            yield return new Figure(FormattableString.Invariant($"{site}, ratio"), doubled / asIs, string.Empty);
        }
    }

    private static (double Seconds, int Holds) Prove(string name, Func<string, string> change)
    {
        SiteFolder folder = new(RepositoryPath.Site(name));
        DiagnosticBag diagnostics = new();
        LoadedSite site = SiteLoader.Load(folder, diagnostics) ?? throw new InvalidOperationException(DiagnosticRenderer.Render(diagnostics.InOrder()));
        ImmutableArray<SourceText> texts =
            [.. Directory.EnumerateFiles(RepositoryPath.Site(name), "*.seq").Order(StringComparer.Ordinal).Select(file => new SourceText(Path.GetFileName(file), change(File.ReadAllText(file))))];
        SiteCheckResult result = SiteChecker.Check(
            texts, site.System.ScanMilliseconds, libraries: (file, span, bag) => folder.Read(file, span, bag) is { } library ? new SourceText(library.Path, change(library.Content)) : null);
        if (result.Diagnostics.Any(one => one.Severity == Severity.Error))
        {
            throw new InvalidOperationException(DiagnosticRenderer.Render([.. result.Diagnostics.Where(one => one.Severity == Severity.Error)]));
        }

        TransitionSystem system = SiteLowering.LowerWithObligations(new SiteProgram(name, site.System.ScanMilliseconds, [.. result.Units]));
        Stopwatch watch = Stopwatch.StartNew();
        int holds = 0;
        foreach (Requirement requirement in system.Requirements)
        {
            using CancellationTokenSource patience = new(TimeSpan.FromSeconds(30));
            Verdict verdict = Prover.Decide(system, requirement, ProofOptions.Default, null, patience.Token);
            holds += verdict is Holds ? 1 : 0;
        }

        return (watch.Elapsed.TotalSeconds, holds);
    }

    private static string Doubled(string program) =>
        ParameterRange().Replace(InputRange().Replace(Limit().Replace(program, Twice), Twice), Twice);

    private static string Twice(Match match)
    {
        string number = match.Groups[2].Value;
        int decimals = number.Contains('.', StringComparison.Ordinal) ? number.Length - number.IndexOf('.', StringComparison.Ordinal) - 1 : 0;
        decimal twice = 2 * decimal.Parse(number, CultureInfo.InvariantCulture);
        return match.Groups[1].Value + twice.ToString($"F{decimals}", CultureInfo.InvariantCulture);
    }

    [GeneratedRegex(@"^(\s+limit )(?!\d{3} h)(\d+(?:\.\d+)?)", RegexOptions.Multiline)]
    private static partial Regex Limit();

    [GeneratedRegex(@"^(\s*input \w+ +-?\d+(?:\.\d+)? \.\. )(\d+(?:\.\d+)?)(?= (?!pH))", RegexOptions.Multiline)]
    private static partial Regex InputRange();

    [GeneratedRegex(@"^(parameter .* from \S+ \S+ to )(\d+(?:\.\d+)?)(?= (?!pH|mV))", RegexOptions.Multiline)]
    private static partial Regex ParameterRange();
}
