namespace Sequencer.Text;

/// <summary>A place as a person names it: line and column, both counted from 1.</summary>
public readonly record struct LinePosition(int Line, int Column)
{
    public override string ToString() => FormattableString.Invariant($"{Line}:{Column}");
}
