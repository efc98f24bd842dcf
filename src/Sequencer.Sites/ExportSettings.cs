using Sequencer.Export.Writing;

namespace Sequencer.Sites;

/// <summary>The forms of exported text, where the standard leaves a choice.</summary>
public sealed record ExportSettings
{
    public static ExportSettings Default { get; } = new();

    /// <summary>By the second edition of IEC 61131-3 in place of the third.</summary>
    public bool SecondEdition { get; init; }

    /// <summary>States and steps as integer constants in place of enumerated types.</summary>
    public bool IntegerStates { get; init; }

    /// <summary>The most letters of a name; null for as long as they come.</summary>
    public int? LongestName { get; init; }

    /// <summary>Also an exchange file by IEC 61131-10.</summary>
    public bool Exchange { get; init; }

    internal TextDialect Dialect => new(
        SecondEdition ? TextEdition.Second : TextEdition.Third,
        IntegerStates ? StateForm.Integer : StateForm.Enumerated,
        LongestName);
}
