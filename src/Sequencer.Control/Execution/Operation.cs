namespace Sequencer.Control.Execution;

/// <summary>What one <see cref="Instruction"/> does with its registers; a Boolean is 0 or 1.</summary>
internal enum Operation : byte
{
    Not,
    And,
    Or,
    Equal,
    Less,
    LessOrEqual,
    Add,
    Multiply,
    Choose,
}
