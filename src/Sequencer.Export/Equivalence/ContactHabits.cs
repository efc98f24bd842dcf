using System.Collections.Immutable;
using System.Text.RegularExpressions;
using Sequencer.Control.TransitionSystems;

namespace Sequencer.Export.Equivalence;

/// <summary>
/// Which output a contact goes with, by the number that their tags share, as YS303 with P303 and ZSC321, made while it is shut, with XV321 (ISA-5.1).
/// Without that a long run ends in the first discrepancy. A guess, which only helps to find runs.
/// </summary>
internal sealed partial class ContactHabits
{
    private const string Contact = ".contact";

    private ContactHabits(ImmutableArray<int> output, ImmutableArray<bool> isInverse)
    {
        Output = output;
        IsInverse = isInverse;
    }

    /// <summary>For each input the output that it goes with; -1 for none.</summary>
    public ImmutableArray<int> Output { get; }

    public ImmutableArray<bool> IsInverse { get; }

    public static bool IsContact(Variable input) => input.Name.EndsWith(Contact, StringComparison.Ordinal);

    public static ContactHabits Of(TransitionSystem system)
    {
        ILookup<string, int> numbers = system.Outputs.Select((output, index) => (Tag: Tag().Match(output.Name), index)).Where(pair => pair.Tag.Success)
            .ToLookup(pair => pair.Tag.Groups[2].Value, pair => pair.index, StringComparer.Ordinal);
        Match[] contacts = [.. system.Inputs.Select(input => Tag().Match(IsContact(input) ? input.Name[..^Contact.Length] : string.Empty))];
        return new ContactHabits(
            [.. contacts.Select(tag => IsFeedback(tag) ? numbers[tag.Groups[2].Value].DefaultIfEmpty(-1).First() : -1)],
            [.. contacts.Select(tag => tag.Groups[1].Value.EndsWith('C'))]);
    }

    private static bool IsFeedback(Match tag) => tag.Success && tag.Groups[1].Value is ['Y' or 'Z', ..];

    [GeneratedRegex("^([A-Z]+)([0-9]+[A-Z]*)$")]
    private static partial Regex Tag();
}
