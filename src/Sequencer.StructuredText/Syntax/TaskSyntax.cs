using System.Collections.Immutable;
using Sequencer.Text;

namespace Sequencer.StructuredText.Syntax;

/// <summary><c>TASK name(INTERVAL := T#100ms, PRIORITY := 1);</c></summary>
public sealed record TaskSyntax(NameSyntax Name, ImmutableArray<ArgumentSyntax> Arguments, SourceSpan Span);
