using Sequencer.Language.Units;
using Sequencer.Text;

namespace Sequencer.Language.Programs;

/// <summary>
/// An operator with the role may take an interlock or a trip out of force, for <see cref="AtMost"/> at a
/// time and no other beside it.
/// </summary>
public sealed record Override(string Protection, Duration AtMost, string Role, string Reason, SourceSpan Span)
{
    public string IsActiveInWords() => $"{Protection} is overridden, for at most {AtMost}: {Reason}";

    public string HasExpiredInWords() => $"The override of {Protection} has ended after {AtMost}: the protection acts again";

    public string IsRefusedInWords() => $"Override of {Protection} refused: role {Role} is not there, or another override is active";
}
