namespace Sequencer.StructuredText.Parsing;

internal enum TokenKind
{
    End,
    Name,
    Keyword,
    Integer,
    Real,
    Duration,

    /// <summary>A name and the <c>#</c> after it: the type of the literal that follows.</summary>
    TypePrefix,

    /// <summary>A directly represented variable, <c>%IX0.0</c>.</summary>
    Address,

    /// <summary>A string of characters, a date or a time of day; <see cref="Token.Text"/> is its type.</summary>
    Opaque,
    Symbol,
}
