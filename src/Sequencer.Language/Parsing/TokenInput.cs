using Sprache;

namespace Sequencer.Language.Parsing;

/// <summary>A place in a line of tokens, as Sprache's combinators want it.</summary>
internal sealed class TokenInput : IInput
{
    public TokenInput(TokenLine line, int position)
    {
        TokenLine = line;
        Position = position;
    }

    public TokenLine TokenLine { get; }

    public int Position { get; }

    public bool AtEnd => Position >= TokenLine.Tokens.Length;

    public Token Token => TokenLine.Tokens[Position];

    public string Source => TokenLine.Text;

    /// <summary>The first character of the token; no parser of ours looks at characters.</summary>
    public char Current => Token.Text[0];

    public int Line => 1;

    public int Column => Position + 1;

    public IDictionary<object, object> Memos => throw new NotSupportedException("the grammar uses no parser that remembers");

    public IInput Advance() => new TokenInput(TokenLine, Position + 1);

    public bool Equals(IInput? other) => other is TokenInput input && input.Position == Position && ReferenceEquals(input.TokenLine, TokenLine);

    public override bool Equals(object? obj) => Equals(obj as IInput);

    public override int GetHashCode() => Position;
}
