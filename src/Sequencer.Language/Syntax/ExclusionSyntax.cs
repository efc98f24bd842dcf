using System.Collections.Immutable;
using Sequencer.Text;

namespace Sequencer.Language.Syntax;

/// <summary>An interlock that keeps outputs apart.</summary>
internal sealed record ExclusionSyntax(
    WordSyntax Name,
    TextSyntax Title,
    ImmutableArray<WordSyntax> Outputs,
    AmountSyntax? Between,
    TextSpan Span) : DeclarationSyntax(Name, Span);
