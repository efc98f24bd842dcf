using Sequencer.Text;

namespace Sequencer.Language.Syntax;

/// <summary>A fact that the unit publishes by name.</summary>
internal sealed record FactSyntax(WordSyntax Name, TextSyntax Description, ExpressionSyntax When, TextSpan Span) : DeclarationSyntax(Name, Span);
