namespace Sequencer.Export.Writing;

/// <summary>Which of the forms that the standard leaves open the text has.</summary>
/// <param name="Edition">The edition that it keeps to.</param>
/// <param name="States">What states and steps are.</param>
/// <param name="LongestName">The most letters of a name; null for as long as they come.</param>
public sealed record TextDialect(TextEdition Edition, StateForm States, int? LongestName)
{
    private const string Asked = "IEC 61131-3 as asked for: ";

    /// <summary>What is written where nothing is asked for.</summary>
    public static TextDialect Default { get; } = new(TextEdition.Third, StateForm.Enumerated, null);

    /// <summary>The dialect in words, for people.</summary>
    public string InWords() => string.Join(
        "; ",
        new[]
        {
            Edition == TextEdition.Third ? "third edition" : "second edition",
            States == StateForm.Enumerated ? "states and steps of enumerated types" : "states and steps as integers",
            LongestName is { } most ? FormattableString.Invariant($"names of at most {most} letters") : null,
        }.OfType<string>());

    /// <summary>What the head of a text says of it where it is not the default.</summary>
    internal string InHead() => $"{Asked}{InWords()}.";

    /// <summary>The dialect, in words, that the head of a text tells; that of the default where it tells none.</summary>
    public static string ToldBy(string text)
    {
        int start = text.IndexOf(Asked, StringComparison.Ordinal);
        int end = start < 0 ? -1 : text.IndexOf('.', start + Asked.Length);
        return end < 0 ? Default.InWords() : text[(start + Asked.Length)..end];
    }

    /// <summary>A value where a constant has to be a literal: a first value.</summary>
    internal string Literal(string name, int number) => States == StateForm.Enumerated ? name : FormattableString.Invariant($"{number} (* {name} *)");

    /// <summary>A value as the label of a CASE. Named constants are allowed there by the third edition only.</summary>
    internal string Label(string name, int number) => Edition == TextEdition.Third ? name : Literal(name, number);

    internal string Type(string enumerated, int largest) => States == StateForm.Enumerated ? enumerated : FormattableString.Invariant($"INT(0..{largest})");
}
