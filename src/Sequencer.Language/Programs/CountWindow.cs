using Sequencer.Language.Units;
using Sequencer.Text;

namespace Sequencer.Language.Programs;

/// <summary>The last <see cref="Time"/>, in equal parts; the part that is partly older counts whole.</summary>
public sealed record CountWindow(Duration Time, int Parts, SourceSpan Span);
