using Sequencer.Language.Syntax;
using Sequencer.Text;

namespace Sequencer.Language.Parsing;

/// <summary>
/// One statement's stretch of the file, from its first to its last character that means anything;
/// <see cref="Fault"/> is what makes it unreadable before any grammar sees it.
/// </summary>
internal sealed record LogicalLine(TextSpan Span, string Documentation, LineFault? Fault);
