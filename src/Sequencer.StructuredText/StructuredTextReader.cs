using System.Collections.Immutable;
using Sequencer.Control.TransitionSystems;
using Sequencer.StructuredText.Lowering;
using Sequencer.StructuredText.Parsing;
using Sequencer.StructuredText.Syntax;
using Sequencer.Text;

namespace Sequencer.StructuredText;

/// <summary>
/// Reads IEC 61131-3 structured text into a transition system: one call of the program is one scan. The subset
/// and its meaning are in spec/structured-text.md.
/// </summary>
public static class StructuredTextReader
{
    public static ReadingResult Read(SourceText source, ReadingOptions options, CancellationToken cancellation = default)
    {
        DiagnosticBag diagnostics = new();
        SourceFileSyntax file = StructuredTextParser.Parse(source, diagnostics);
        bool isWhole = !diagnostics.HasErrors;
        EntryPoint? entry = EntryPoint.Choose(file, options, isWhole ? diagnostics : new DiagnosticBag());
        SystemLowering? lowering = entry is null ? null : new SystemLowering(file, entry, diagnostics, cancellation);
        TransitionSystem? system = lowering?.Lower();
        return new ReadingResult(diagnostics.HasErrors ? null : system, diagnostics.InOrder())
        {
            Addresses = lowering?.Addresses ?? ImmutableDictionary<string, string>.Empty,
        };
    }
}
