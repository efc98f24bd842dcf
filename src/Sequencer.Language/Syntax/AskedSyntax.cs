using System.Collections.Immutable;
using Sequencer.Text;

namespace Sequencer.Language.Syntax;

/// <summary><c>start asked by TK201, TK202</c>.</summary>
internal sealed record AskedSyntax(ImmutableArray<WordSyntax> Units, TextSpan Span) : StatementSyntax(Span);
