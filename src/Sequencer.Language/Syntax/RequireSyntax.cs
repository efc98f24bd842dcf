using Sequencer.Text;

namespace Sequencer.Language.Syntax;

/// <summary>What must be true; <see cref="Statement"/> is where the words after the title stand.</summary>
internal sealed record RequireSyntax(
    WordSyntax Name,
    TextSyntax Title,
    RequirementSyntax Requirement,
    TextSpan Statement,
    TextSpan Span) : DeclarationSyntax(Name, Span);
