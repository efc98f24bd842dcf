namespace Sequencer.StructuredText.Syntax;

public enum UnaryOperator
{
    Minus,
    Not,
}
