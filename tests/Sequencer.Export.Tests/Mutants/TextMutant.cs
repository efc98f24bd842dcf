namespace Sequencer.Export.Tests.Mutants;

/// <summary>A text with one thing changed in one line of it, counted from the one that begins the block (1).</summary>
internal sealed record TextMutant(string Operator, int Line, string Before, string After, string Text)
{
    public string Name => FormattableString.Invariant($"{Operator}, line {Line}: {Before.Trim()}");
}
