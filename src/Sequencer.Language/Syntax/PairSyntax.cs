using Sequencer.Text;

namespace Sequencer.Language.Syntax;

/// <summary><c>pair DISCHARGE "Discharge pumps" P320A, P320B duty P320A changes over within 5 s, rotates each batch</c>.</summary>
internal sealed record PairSyntax(
    WordSyntax Name,
    TextSyntax Title,
    WordSyntax First,
    WordSyntax Second,
    WordSyntax Duty,
    AmountSyntax Within,
    bool Rotates,
    TextSpan Span) : DeclarationSyntax(Name, Span);
