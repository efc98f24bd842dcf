using Sequencer.Text;

namespace Sequencer.Language.Syntax;

/// <summary>An alarm.</summary>
internal sealed record AlarmSyntax(WordSyntax Name, TextSyntax Message, ExpressionSyntax Condition, TextSpan Span)
    : DeclarationSyntax(Name, Span);
