namespace Sequencer.Language.Parsing;

internal enum TokenKind
{
    /// <summary>A keyword, a name or a unit.</summary>
    Word,

    Number,

    /// <summary>So many out of so many: <c>2oo3</c>.</summary>
    Vote,

    /// <summary>Text in double quotes.</summary>
    Text,

    /// <summary>A directly represented variable, <c>%IX0.3</c>.</summary>
    Address,

    /// <summary>One or two signs, such as <c>&gt;=</c>.</summary>
    Symbol,
}
