namespace Sequencer.Export.Tests.Mutants;

/// <summary>A text with one thing changed in one line (from 1) of it.</summary>
internal sealed record TextMutant(string Operator, int Line, string Before, string After, string Text)
{
    public string Name => FormattableString.Invariant($"{Operator}, line {Line}: {Before.Trim()}");
}
