using System.Collections.Immutable;
using System.Globalization;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using Sequencer.Control.Traces;
using Sequencer.Export.Equivalence;
using Sequencer.Export.Wiring;
using Sequencer.Export.Writing;
using Sequencer.Proof;
using Sequencer.Proof.Reaching;
using Sequencer.Proof.Remembering;
using Sequencer.Sites.Folders;
using Sequencer.Text;

namespace Sequencer.Sites.Stages;

/// <summary>Structured text that somebody edited by hand, against the programs.</summary>
internal static class ComparisonStage
{
    private const int MostGuesses = 10;

    private static readonly ProofOptions Budget = ProofOptions.Default with { Conflicts = 500_000 };

    /// <summary>Reads the file; null and a reason, with a place where there is one, where that cannot be done.</summary>
    public static ReadText? Read(LoadedSite site, TextDialect dialect, string file, CancellationToken cancellation, out string reason)
    {
        DecodedText decoded;
        try
        {
            decoded = SourceDecoder.Decode(file.Replace('\\', '/'), File.ReadAllBytes(file), SiteFolder.LargestFileBytes);
        }
        catch (Exception failure) when (failure is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            reason = $"`{file}` cannot be read: {failure.Message}";
            return null;
        }

        // A text in another form has other names and types: hardly anything of it could be paired.
        if (decoded.Text is not null && TextDialect.ToldBy(decoded.Text.Content) is var told && told != dialect.InWords())
        {
            reason = $"`{file}` says in its head that it was written in another form: {told}; it would be compared as: {dialect.InWords()}. "
                + "Give --compare the options --edition, --states and --longest-name that the export was given; nothing was compared";
            return null;
        }

        ReadText? read = decoded.Text is null ? null : TextComparison.Read(site.System, ExportStage.Write(site, dialect), decoded.Text, cancellation);
        ImmutableArray<Diagnostic> diagnostics = [.. decoded.Diagnostics, .. read?.Diagnostics ?? []];
        if (read is null || read.Systems.IsEmpty)
        {
            reason = $"{DiagnosticRenderer.Render(diagnostics)}\n`{file}` cannot be read as structured text: nothing was compared, and nothing was written";
            return null;
        }

        reason = "";
        return read;
    }

    public static StageReport Run(LoadedSite site, TextDialect dialect, ReadText text, OutputFolder? folder, IProofMemory? memory, CancellationToken cancellation)
    {
        (ImmutableArray<EqualityResult> results, ImmutableArray<(string Own, string Other)> guessed) =
            TextComparison.Decide(site.System, ExportStage.Write(site, dialect), text, Budget, () => Ways(site, memory, cancellation), cancellation);
        foreach (ProvedEqual proved in results.OfType<ProvedEqual>())
        {
            folder?.Keep(CertificateName(proved), proved.Certificate);
        }

        WiringResult wiring = TextComparison.Wiring(site.System, ExportStage.Write(site, dialect), text, Budget, cancellation);
        Outcome outcome = Outcomes.Worst([.. results.Select(Judge), WiringWords.Judge(wiring)]);
        return new StageReport(
            "compare",
            outcome,
            $"{text.Source.Path} {Verdict(outcome)}",
            [.. results.SelectMany(result => Words(result, text.Source, site.System.ScanMilliseconds, folder is not null)), .. WiringWords.Of(wiring), .. Guessed(guessed), .. Told(text)],
            Json(results, text.Source, guessed, site.System.ScanMilliseconds, wiring));
    }

    /// <summary>Runs to every step and transition, as far as they are found: where a difference of the procedure can be seen.</summary>
    private static ImmutableArray<Trace> Ways(LoadedSite site, IProofMemory? memory, CancellationToken cancellation) =>
    [
        .. GoalProver.DecideAll(site.ProofSystem, site.ProofSystem.Goals, ProofOptions.Default, memory, null, cancellation)
            .OfType<Reached>().Select(reached => reached.Way),
    ];

    /// <summary>What the reader warns of.</summary>
    private static IEnumerable<string> Told(ReadText text) =>
        text.Diagnostics.Where(one => one.Severity == Severity.Warning)
            .Select(one => $"warning {one.Code}: {one.Message}; {Line(one.Span)}");

    private static Outcome Judge(EqualityResult result) => result switch
    {
        ProvedEqual => Outcome.Holds,
        ProvedDifferent => Outcome.Fails,
        _ => Outcome.Undecided,
    };

    private static string Verdict(Outcome outcome) => outcome switch
    {
        Outcome.Holds => "is proved equal to the programs",
        Outcome.Undecided => "is not proved equal to the programs",
        _ => "does not do what the programs do",
    };

    private static string CertificateName(ProvedEqual proved) => $"certificates/compare-{proved.Unit}.smt2";

    private static IEnumerable<string> Words(EqualityResult result, SourceText text, int scanMilliseconds, bool keepsCertificate)
    {
        switch (result)
        {
            case ProvedEqual equal:
                string where = keepsCertificate ? $"; {CertificateName(equal)}" : "";
                return [string.Create(CultureInfo.InvariantCulture, $"{equal.Unit}: proved equal in every scan of every run: {equal.Compared} outputs, alarms and variables{where}")];
            case ProvedDifferent different:
                LockstepDifference found = different.Difference;
                decimal seconds = found.Scan * scanMilliseconds / 1000m;
                return
                [
                    string.Create(CultureInfo.InvariantCulture, $"{different.Unit}: a run was found and replayed that differs first in scan {found.Scan}, {seconds:0.###} s after power-up:"),
                    string.Create(CultureInfo.InvariantCulture, $"  `{found.Reference}` is {found.ReferenceValue} in the program; `{found.Other}` is {found.OtherValue} in the text"),
                    $"  program {Line(different.InProgram.Written)}",
                    $"  text    {Line(Assignment(text, different.InText))}",
                ];
            default:
                return [$"{result.Unit}: undecided: {((EqualityUndecided)result).Reason}"];
        }
    }

    private static IEnumerable<string> Guessed(ImmutableArray<(string Own, string Other)> guessed)
    {
        if (guessed.IsEmpty)
        {
            return [];
        }

        string more = guessed.Length > MostGuesses ? string.Create(CultureInfo.InvariantCulture, $", and {guessed.Length - MostGuesses} more") : "";
        return [$"names that were guessed: {string.Join(", ", guessed.Take(MostGuesses).Select(pair => $"{pair.Other} for {pair.Own}"))}{more}"];
    }

    private static string Line(SourceSpan span) => $"{span.Place}: {span.Source.Line(span.Start.Line).ToString().Trim()}";

    /// <summary>The last line of the block that assigns the variable; where there is none, its declaration.</summary>
    private static SourceSpan Assignment(SourceText text, SourceSpan declared)
    {
        string name = declared.Text.ToString();
        int start = declared.Span.End;
        int end = text.Content.IndexOf("END_FUNCTION_BLOCK", start, StringComparison.OrdinalIgnoreCase);
        string block = text.Content[start..(end < 0 ? text.Content.Length : end)];
        MatchCollection found = Regex.Matches(block, $@"(?<![A-Za-z0-9_.]){Regex.Escape(name)}\s*:=", RegexOptions.IgnoreCase);
        return found.Count == 0 ? declared : text.At(start + found[^1].Index, name.Length);
    }

    private static JsonObject Json(ImmutableArray<EqualityResult> results, SourceText text, ImmutableArray<(string Own, string Other)> guessed, int scanMilliseconds, WiringResult wiring) => new()
    {
        ["file"] = text.Path,
        ["equality"] = new JsonArray([.. results.Select(result => new JsonObject
        {
            ["unit"] = result.Unit,
            ["verdict"] = result switch
            {
                ProvedEqual => "equal",
                ProvedDifferent => "different",
                _ => "undecided",
            },
            ["words"] = string.Join('\n', Words(result, text, scanMilliseconds, keepsCertificate: false)),
        })]),
        ["wiring"] = WiringWords.Json(wiring),
        ["guessed"] = new JsonArray([.. guessed.Select(pair => new JsonObject { ["ours"] = pair.Own, ["theirs"] = pair.Other })]),
    };
}
