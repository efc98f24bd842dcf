using System.Collections.Immutable;
using Sequencer.Language.Programs;
using Sequencer.Text;

namespace Sequencer.Language.Syntax;

/// <summary>An interlock that blocks outputs.</summary>
internal sealed record InterlockSyntax(
    WordSyntax Name,
    TextSyntax Title,
    ImmutableArray<WordSyntax> Outputs,
    InterlockForm Form,
    ExpressionSyntax Condition,
    ExpressionSyntax? Release,
    bool NeedsReset,
    DelaysSyntax Delays,
    WordSyntax? Group,
    TextSpan Span) : DeclarationSyntax(Name, Span);
