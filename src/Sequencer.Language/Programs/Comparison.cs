namespace Sequencer.Language.Programs;

public enum Comparison
{
    Less,
    LessOrEqual,
    Greater,
    GreaterOrEqual,
}
