using System.Collections.Frozen;
using System.Collections.Immutable;
using Sequencer.StructuredText.Syntax;
using Sequencer.Text;

namespace Sequencer.StructuredText.Parsing;

/// <summary>
/// Expressions by precedence, IEC 61131-3 (second edition) Table 55 and Annex B.3: operators of equal
/// precedence apply from left to right (<c>**</c> too), and a sign or NOT binds tighter than <c>**</c>.
/// </summary>
internal sealed class ExpressionParser
{
    private static readonly FrozenDictionary<string, (int Level, BinaryOperator Operator)> Operators =
        new Dictionary<string, (int, BinaryOperator)>(StringComparer.Ordinal)
        {
            ["OR"] = (1, BinaryOperator.Or),
            ["XOR"] = (2, BinaryOperator.Xor),
            ["AND"] = (3, BinaryOperator.And),
            ["&"] = (3, BinaryOperator.And),
            ["="] = (4, BinaryOperator.Equal),
            ["<>"] = (4, BinaryOperator.NotEqual),
            ["<"] = (5, BinaryOperator.Less),
            ["<="] = (5, BinaryOperator.LessOrEqual),
            [">"] = (5, BinaryOperator.Greater),
            [">="] = (5, BinaryOperator.GreaterOrEqual),
            ["+"] = (6, BinaryOperator.Add),
            ["-"] = (6, BinaryOperator.Subtract),
            ["*"] = (7, BinaryOperator.Multiply),
            ["/"] = (7, BinaryOperator.Divide),
            ["MOD"] = (7, BinaryOperator.Modulo),
            ["**"] = (8, BinaryOperator.Power),
        }.ToFrozenDictionary(StringComparer.Ordinal);

    private readonly TokenReader _tokens;

    public ExpressionParser(TokenReader tokens)
    {
        _tokens = tokens;
    }

    public ExpressionSyntax Expression() => Binary(1);

    /// <summary>The arguments of a call, brackets included.</summary>
    public ImmutableArray<ArgumentSyntax> Arguments()
    {
        ImmutableArray<ArgumentSyntax>.Builder arguments = ImmutableArray.CreateBuilder<ArgumentSyntax>();
        _tokens.Expect("(");
        if (!_tokens.IsLost && !_tokens.At(")"))
        {
            do
            {
                arguments.Add(Argument());
            }
            while (_tokens.TryTake(","));
        }

        _tokens.Expect(")");
        return arguments.ToImmutable();
    }

    public NameSyntax Name(string what)
    {
        Token token = _tokens.Current;
        if (!_tokens.IsLost && token.Kind == TokenKind.Name)
        {
            _tokens.Take();
        }
        else if (token.Kind == TokenKind.Keyword)
        {
            _tokens.Lose(StructuredTextDiagnostics.ReservedName(token.Span));
        }
        else
        {
            _tokens.Lose(what);
        }

        return new NameSyntax(token.Text, token.Span);
    }

    public PathSyntax Path()
    {
        SourceSpan start = _tokens.Current.Span;
        NameSyntax root = Name("a name");
        ImmutableArray<SelectorSyntax>.Builder selectors = ImmutableArray.CreateBuilder<SelectorSyntax>();
        while (!_tokens.IsLost && _tokens.AtAny([".", "["]))
        {
            selectors.Add(_tokens.At("[") ? Index() : Member());
        }

        if (_tokens.At("^"))
        {
            _tokens.Lose(StructuredTextDiagnostics.NotSupportedYet(_tokens.Current.Span, "a reference"));
        }

        return new PathSyntax(root, selectors.ToImmutable(), _tokens.Since(start));
    }

    private MemberSelectorSyntax Member()
    {
        _tokens.Take();
        if (_tokens.Current.Kind is TokenKind.Integer or TokenKind.Address)
        {
            _tokens.Lose(StructuredTextDiagnostics.NotSupportedYet(_tokens.Current.Span, "a bit of a string of bits"));
        }

        return new MemberSelectorSyntax(Name("a name"));
    }

    private IndexSelectorSyntax Index()
    {
        SourceSpan start = _tokens.Take().Span;
        ImmutableArray<ExpressionSyntax>.Builder indices = ImmutableArray.CreateBuilder<ExpressionSyntax>();
        if (_tokens.Enter())
        {
            do
            {
                indices.Add(Expression());
            }
            while (_tokens.TryTake(","));
            _tokens.Leave();
        }

        _tokens.Expect("]");
        return new IndexSelectorSyntax(indices.ToImmutable(), _tokens.Since(start));
    }

    /// <summary>What a variable begins with: a value, or those of a structure or an array.</summary>
    public ExpressionSyntax FirstValue()
    {
        SourceSpan start = _tokens.Current.Span;
        bool isStructure = _tokens.At("(") && _tokens.Next.Kind == TokenKind.Name;
        if ((!isStructure && !_tokens.At("[")) || _tokens.IsLost || !_tokens.Enter())
        {
            return Expression();
        }

        ExpressionSyntax value = isStructure ? StructureOrBracket(start) : ArrayValue();
        _tokens.Leave();
        return value;
    }

    /// <summary><c>(member := value, ...)</c>, or a value that begins with a bracket.</summary>
    private ExpressionSyntax StructureOrBracket(SourceSpan start)
    {
        if (!_tokens.Ahead(2).Is(":="))
        {
            return Expression();
        }

        ImmutableArray<ArgumentSyntax>.Builder members = ImmutableArray.CreateBuilder<ArgumentSyntax>();
        _tokens.Take();
        do
        {
            SourceSpan place = _tokens.Current.Span;
            NameSyntax name = Name("the name of a member");
            _tokens.Expect(":=");
            ExpressionSyntax value = _tokens.IsLost ? new MissingExpressionSyntax(place) : FirstValue();
            members.Add(new ArgumentSyntax(name, value, false, _tokens.Since(place)));
        }
        while (_tokens.TryTake(","));
        _tokens.Expect(")");
        return new StructureValueSyntax(members.ToImmutable(), _tokens.Since(start));
    }

    private ArrayValueSyntax ArrayValue()
    {
        SourceSpan start = _tokens.Take().Span;
        ImmutableArray<ArrayPartSyntax>.Builder parts = ImmutableArray.CreateBuilder<ArrayPartSyntax>();
        do
        {
            parts.Add(ArrayPart());
        }
        while (_tokens.TryTake(","));
        _tokens.Expect("]");
        return new ArrayValueSyntax(parts.ToImmutable(), _tokens.Since(start));
    }

    private ArrayPartSyntax ArrayPart()
    {
        SourceSpan start = _tokens.Current.Span;
        if (_tokens.Current.Kind != TokenKind.Integer || !_tokens.Next.Is("("))
        {
            return new ArrayPartSyntax(1, FirstValue(), _tokens.Since(start));
        }

        long times = (long)_tokens.Take().Number;
        _tokens.Take();
        ExpressionSyntax? value = _tokens.At(")") ? null : FirstValue();
        _tokens.Expect(")");
        return new ArrayPartSyntax(times, value, _tokens.Since(start));
    }

    private ExpressionSyntax Binary(int lowest)
    {
        SourceSpan start = _tokens.Current.Span;
        ExpressionSyntax left = Unary();
        while (!_tokens.IsLost && Operator() is var (level, kind) && level >= lowest)
        {
            _tokens.Take();
            ExpressionSyntax right = Binary(level + 1);
            left = new BinaryExpressionSyntax(kind, left, right, _tokens.Since(start));
        }

        return left;
    }

    private (int Level, BinaryOperator Operator)? Operator() =>
        _tokens.Current.Kind is TokenKind.Keyword or TokenKind.Symbol && Operators.TryGetValue(_tokens.Current.Text, out (int, BinaryOperator) found) ? found : null;

    private ExpressionSyntax Unary()
    {
        SourceSpan start = _tokens.Current.Span;
        if (_tokens.TryTake("+"))
        {
            return Primary();
        }

        UnaryOperator? kind = _tokens.TryTake("-") ? UnaryOperator.Minus : _tokens.TryTake("NOT") ? UnaryOperator.Not : null;
        ExpressionSyntax operand = Primary();
        return kind is { } known ? new UnaryExpressionSyntax(known, operand, _tokens.Since(start)) : operand;
    }

    private ExpressionSyntax Primary()
    {
        Token token = _tokens.Current;
        switch (token.Kind)
        {
            case TokenKind.Integer:
                _tokens.Take();
                return new IntegerLiteralSyntax((long)token.Number, null, token.Span);
            case TokenKind.Real:
                _tokens.Take();
                return new OpaqueLiteralSyntax("LREAL", token.Span);
            case TokenKind.Duration:
                _tokens.Take();
                return new DurationLiteralSyntax(token.Number, token.Span);
            case TokenKind.TypePrefix:
                return Typed();
            case TokenKind.Name:
                return NameOrCall();
            case TokenKind.Opaque:
                _tokens.Take();
                return new OpaqueLiteralSyntax(token.Text, token.Span);
            case TokenKind.Address:
                return Unsupported("an address inside an expression");
            default:
                return KeywordOrBracket();
        }
    }

    private ExpressionSyntax KeywordOrBracket()
    {
        SourceSpan start = _tokens.Current.Span;
        if (_tokens.AtAny(["TRUE", "FALSE"]))
        {
            return new BooleanLiteralSyntax(_tokens.Take().Is("TRUE"), start);
        }

        if (_tokens.AtAny(["THIS", "SUPER", "NULL", "REF"]))
        {
            return Unsupported($"`{_tokens.Current.Text}`");
        }

        if (_tokens.At("(") && !_tokens.IsLost && _tokens.Enter())
        {
            _tokens.Take();
            ExpressionSyntax inside = Expression();
            _tokens.Expect(")");
            _tokens.Leave();
            return inside;
        }

        _tokens.Lose("a value");
        return new MissingExpressionSyntax(start);
    }

    private ExpressionSyntax NameOrCall()
    {
        Token name = _tokens.Current;
        if (!_tokens.Next.Is("("))
        {
            return Path();
        }

        if (!_tokens.Enter())
        {
            return new MissingExpressionSyntax(name.Span);
        }

        _tokens.Take();
        ImmutableArray<ArgumentSyntax> arguments = Arguments();
        _tokens.Leave();
        return new FunctionCallSyntax(new NameSyntax(name.Text, name.Span), arguments, _tokens.Since(name.Span));
    }

    /// <summary>What follows a type's name and <c>#</c>: a number, TRUE or FALSE, or a name of an enumeration.</summary>
    private ExpressionSyntax Typed()
    {
        Token prefix = _tokens.Take();
        bool negative = _tokens.TryTake("-");
        Token value = _tokens.Current;
        SourceSpan span = prefix.Span.Cover(value.Span);
        switch (value.Kind)
        {
            case TokenKind.Integer:
                _tokens.Take();
                return new IntegerLiteralSyntax(negative ? -(long)value.Number : (long)value.Number, prefix.Text, span);
            case TokenKind.Real:
                _tokens.Take();
                return new OpaqueLiteralSyntax(prefix.Text, span);
            case TokenKind.Name when !negative:
                _tokens.Take();
                return new EnumerationLiteralSyntax(new NameSyntax(prefix.Text, prefix.Span), new NameSyntax(value.Text, value.Span), span);
            case TokenKind.Keyword when !negative && (value.Is("TRUE") || value.Is("FALSE")):
                _tokens.Take();
                return new BooleanLiteralSyntax(value.Is("TRUE"), span);
            default:
                _tokens.Lose("a value of the type before `#`");
                return new MissingExpressionSyntax(span);
        }
    }

    private MissingExpressionSyntax Unsupported(string construct)
    {
        SourceSpan span = _tokens.Current.Span;
        _tokens.Lose(StructuredTextDiagnostics.NotSupportedYet(span, construct));
        return new MissingExpressionSyntax(span);
    }

    private ArgumentSyntax Argument()
    {
        SourceSpan start = _tokens.Current.Span;
        NameSyntax? name = null;
        bool output = false;
        if (_tokens.Next.Is(":=") || _tokens.Next.Is("=>"))
        {
            name = ArgumentName();
            output = _tokens.Take().Is("=>");
        }

        ExpressionSyntax value = output ? Path() : Expression();
        return new ArgumentSyntax(name, value, output, _tokens.Since(start));
    }

    private NameSyntax ArgumentName()
    {
        if (_tokens.AtAny(["EN", "ENO"]))
        {
            Token token = _tokens.Current;
            _tokens.Lose(StructuredTextDiagnostics.NotSupportedYet(token.Span, "EN and ENO"));
        }

        return Name("the name of a parameter");
    }
}
