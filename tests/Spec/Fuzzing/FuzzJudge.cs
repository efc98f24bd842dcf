using System.Collections.Immutable;
using System.Text;
using System.Text.RegularExpressions;
using Sequencer.Control.TransitionSystems;
using Sequencer.Export.Equivalence;
using Sequencer.Export.Writing;
using Sequencer.Language.Checking;
using Sequencer.Language.Formatting;
using Sequencer.Language.Parsing;
using Sequencer.Language.Programs;
using Sequencer.Lowering;
using Sequencer.Sites.Descriptions;
using Sequencer.Text;

namespace Sequencer.Spec.Tests.Fuzzing;

/// <summary>
/// Takes an input through decoding, layout, parsing, modules, binding, rules and, where there is no error, lowering, and
/// says what should not have happened.
/// </summary>
internal static partial class FuzzJudge
{
    private const int ScanMilliseconds = 100;
    private const int Scans = 300;
    private const int DeepestFrameShown = 3;

    /// <summary>What went wrong, in words that are the same for the same defect; null where all is well.</summary>
    public static string? Fault(FuzzInput input, ParseCache cache, out bool wasLowered)
    {
        wasLowered = false;
        try
        {
            return input.Texts.Select((text, index) => Layout(new SourceText(index < input.Programs.Length ? "program.seq" : "library.seqlib", text))).FirstOrDefault(fault => fault is not null)
                ?? Check(input, cache, out wasLowered);
        }
        catch (Exception failure) when (failure is not OutOfMemoryException)
        {
            return Told(failure);
        }
    }

    private static string? Layout(SourceText source)
    {
        FormatResult first = ProgramFormatter.Format(source);
        if (Misplaced(first.Diagnostics) is { } misplaced)
        {
            return misplaced;
        }

        if (first.Text is null)
        {
            return first.Diagnostics.Any(diagnostic => diagnostic.Severity == Severity.Error) ? null : "no layout, and no error either";
        }

        FormatResult second = ProgramFormatter.Format(new SourceText(source.Path, first.Text));
        return second.Text == first.Text ? null : "laying out twice changes something";
    }

    private static string? Check(FuzzInput input, ParseCache cache, out bool wasLowered)
    {
        wasLowered = false;
        List<SourceText> texts = [];
        foreach ((string program, int index) in input.Programs.Select((program, index) => (program, index)))
        {
            string path = FormattableString.Invariant($"unit{index}.seq");
            DecodedText decoded = SourceDecoder.Decode(path, Encoding.UTF8.GetBytes(program), ProgramLimits.FileBytes);
            texts.Add(decoded.Text ?? throw new InvalidOperationException("sound UTF-8 was not decoded"));
        }

        SiteCheckResult result = SiteChecker.Check(texts, ScanMilliseconds, cache: cache, libraries: Library(input));
        if (Misplaced(result.Diagnostics) is { } misplaced)
        {
            return misplaced;
        }

        SourceText[] laidOut = [.. texts.Select(text => new SourceText(text.Path, ProgramFormatter.Format(text).Text ?? text.Content))];
        if (!Codes(SiteChecker.Check(laidOut, ScanMilliseconds, cache: cache, libraries: Library(input))).SequenceEqual(Codes(result)))
        {
            return "the layout changes what the check tells";
        }

        if (result.Files.Any(file => file.Program is null && !file.HasErrors))
        {
            return "a program has no meaning, and no error says why";
        }

        // Two units of one name are told by the reader of the site's folder.
        bool distinct = result.Units.Select(unit => unit.Name).Distinct(StringComparer.OrdinalIgnoreCase).Count() == texts.Count;
        if (distinct && result.Files.All(file => !file.HasErrors))
        {
            wasLowered = true;
            return Export(new SiteProgram("fuzz", ScanMilliseconds, result.Units));
        }

        return null;
    }

    private static IEnumerable<string> Codes(SiteCheckResult result) => result.Diagnostics.Select(diagnostic => diagnostic.Code).Order(StringComparer.Ordinal);

    /// <summary>Both roads to the meaning: by lowering, and by the text that is written from the program and read back.</summary>
    private static string? Export(SiteProgram site)
    {
        TransitionSystem system = SiteLowering.Lower(site);
        ReadBackResult back = ReadBack.Run(system, StructuredTextWriter.Write(site, new ExportHeader("fuzz", "1", "")), Scans, 1, CancellationToken.None);
        return back.Difference is { } difference ? $"the structured text differs: {difference}"
            : back.Agrees ? null
            : $"the structured text cannot be read: {string.Join(", ", back.Diagnostics.Select(diagnostic => diagnostic.Code + " " + diagnostic.Message).Distinct().Take(3))}";
    }

    private static Language.Modules.LibraryReader Library(FuzzInput input) => (file, named, diagnostics) =>
    {
        if (input.Libraries.TryGetValue(file, out string? text))
        {
            return new SourceText(file, text);
        }

        diagnostics.Add(SiteDiagnostics.NoSuchFile(named, file));
        return null;
    };

    private static string? Misplaced(ImmutableArray<Diagnostic> diagnostics)
    {
        foreach (Diagnostic diagnostic in diagnostics)
        {
            if (!Code().IsMatch(diagnostic.Code) || diagnostic.Message.Length == 0 || diagnostic.Reason.Length == 0 || diagnostic.Mend.Length == 0)
            {
                return $"{diagnostic.Code} lacks a code, a message, a reason or a mend";
            }

            if (!IsInside(diagnostic.Span) || diagnostic.AllNotes.Any(note => !IsInside(note.Span)))
            {
                return $"{diagnostic.Code} points outside its source";
            }

            if (diagnostic.Fix is { } fix && (fix.Edits.Any(edit => !IsInside(edit.Span)) || TextEdits.Apply(fix.Edits[0].Span.Source.Content, fix.Edits) is not { } mended || mended == fix.Edits[0].Span.Source.Content))
            {
                return $"{diagnostic.Code} offers a fix that cannot be made, or that changes nothing";
            }

            // A place without a character is good at the end of the text or of a line only: elsewhere something stands there to be shown.
            if (diagnostic.Span.Span.Length == 0 && diagnostic.Span.Source.Content is { Length: > 0 } content
                && diagnostic.Span.Span.Start is var start && start > 0 && start < content.Length && !IsEndOfWords(content, start))
            {
                return $"{diagnostic.Code} points at nothing";
            }

            DiagnosticRenderer.Render(diagnostic);
        }

        DiagnosticRenderer.RenderJson(diagnostics);
        return null;
    }

    private static bool IsEndOfWords(string content, int at) => content[at] is '\n' or ' ' or '\t' or '-';

    private static bool IsInside(SourceSpan span) => span.Source.Path.Length > 0
        && span.Span.End <= span.Source.Content.Length && span.Written.Span.End <= span.Written.Source.Content.Length;

    private static string Told(Exception failure)
    {
        IEnumerable<string> frames = (failure.StackTrace ?? "").Split('\n').Where(line => line.Contains(" Sequencer.", StringComparison.Ordinal))
            .Select(line => Place().Replace(line.Trim(), "")).Take(DeepestFrameShown);
        return $"{failure.GetType().Name}: {string.Join(" | ", frames)}";
    }

    [GeneratedRegex(@"^SEQ\d{4}$")]
    private static partial Regex Code();

    [GeneratedRegex(@"(\(.*)? in .*$")]
    private static partial Regex Place();
}
