using Sequencer.Text;

namespace Sequencer.Language.Syntax;

/// <summary>What is wrong in a line, at a place counted from its start; the wording waits for the line's place in the file.</summary>
internal sealed record LineFault(TextSpan Span, Func<SourceSpan, Diagnostic> Describe);
