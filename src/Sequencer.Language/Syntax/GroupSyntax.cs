using Sequencer.Text;

namespace Sequencer.Language.Syntax;

/// <summary>A group of protections: <c>group VACUUM "Vacuum system"</c>.</summary>
internal sealed record GroupSyntax(WordSyntax Name, TextSyntax Title, TextSpan Span) : DeclarationSyntax(Name, Span);
