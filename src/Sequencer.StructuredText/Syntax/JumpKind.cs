namespace Sequencer.StructuredText.Syntax;

public enum JumpKind
{
    /// <summary>Ends the innermost loop.</summary>
    Exit,

    /// <summary>Ends this turn of the innermost loop.</summary>
    Continue,

    /// <summary>Ends the function, block or program.</summary>
    Return,
}
