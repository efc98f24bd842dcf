using System.Collections.Immutable;
using Sequencer.Text;

namespace Sequencer.Language.Syntax;

/// <summary><c>join 49, 59 to 60 when X</c>.</summary>
internal sealed record JoinSyntax(
    ImmutableArray<NumberSyntax> Sources,
    ImmutableArray<NumberSyntax> Targets,
    ExpressionSyntax When,
    TextSpan Span) : StatementSyntax(Span);
