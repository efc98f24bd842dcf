using System.Collections.Immutable;
using Sequencer.StructuredText.Syntax;
using Sequencer.Text;

namespace Sequencer.StructuredText.Parsing;

/// <summary>Statements, each ended by <c>;</c>; a broken one is reported and left out, the next is read.</summary>
internal sealed class StatementParser
{
    private static readonly string[] Strays =
        ["END_IF", "ELSE", "ELSIF", "END_CASE", "END_FOR", "END_WHILE", "END_REPEAT", "UNTIL"];

    /// <summary>Words that end a list of statements, and so stop the search for the next one.</summary>
    private static readonly string[] Stops =
    [
        .. Strays, "END_FUNCTION", "END_FUNCTION_BLOCK", "END_PROGRAM", "FUNCTION", "FUNCTION_BLOCK", "PROGRAM", "CONFIGURATION", "TYPE",
    ];

    private readonly TokenReader _tokens;
    private readonly ExpressionParser _expressions;

    /// <summary>How many loops are around the place.</summary>
    private int _loops;

    public StatementParser(TokenReader tokens, ExpressionParser expressions)
    {
        _tokens = tokens;
        _expressions = expressions;
    }

    /// <summary>The body of a program, function or block. An end without a beginning in it is passed over.</summary>
    public ImmutableArray<StatementSyntax> UnitBody()
    {
        ImmutableArray<StatementSyntax>.Builder body = ImmutableArray.CreateBuilder<StatementSyntax>();
        body.AddRange(Statements());
        while (_tokens.AtAny(Strays))
        {
            if (!_tokens.HasRecovered)
            {
                _tokens.Report(StructuredTextDiagnostics.Expected(_tokens.Current.Span, "a statement", _tokens.Current.Shown));
            }

            _tokens.Take();
            body.AddRange(Statements());
        }

        return body.ToImmutable();
    }

    private ImmutableArray<StatementSyntax> Statements() => Statements(static () => false);

    private ImmutableArray<StatementSyntax> Statements(Func<bool> ended)
    {
        ImmutableArray<StatementSyntax>.Builder statements = ImmutableArray.CreateBuilder<StatementSyntax>();
        while (!_tokens.AtEnd && !_tokens.AtAny(Stops) && !ended())
        {
            if (_tokens.TryTake(";"))
            {
                continue;
            }

            StatementSyntax? statement = Statement();
            if (!_tokens.IsLost)
            {
                _tokens.Expect(";");
                if (statement is not null)
                {
                    statements.Add(statement);
                }
            }

            _tokens.Recover(Stops);
        }

        return statements.ToImmutable();
    }

    private StatementSyntax? Statement()
    {
        if (_tokens.Current.Kind != TokenKind.Keyword)
        {
            return AssignmentOrCall();
        }

        if (!_tokens.Enter())
        {
            return null;
        }

        StatementSyntax? statement = _tokens.Current.Text switch
        {
            "IF" => If(),
            "CASE" => Case(),
            "FOR" => For(),
            "WHILE" => While(),
            "REPEAT" => Repeat(),
            "RETURN" => new JumpSyntax(JumpKind.Return, _tokens.Take().Span),
            "EXIT" or "CONTINUE" => LoopJump(),
            "SUPER" or "THIS" => Unsupported("a method call"),
            _ => NotAStatement(),
        };
        _tokens.Leave();
        return statement;
    }

    private StatementSyntax? NotAStatement()
    {
        _tokens.Lose("a statement");
        _tokens.Take();
        return null;
    }

    private StatementSyntax? Unsupported(string construct)
    {
        _tokens.Report(StructuredTextDiagnostics.NotSupportedYet(_tokens.Take().Span, construct));
        return null;
    }

    /// <summary>EXIT and CONTINUE stand inside a loop.</summary>
    private JumpSyntax? LoopJump()
    {
        Token token = _tokens.Take();
        if (_loops == 0)
        {
            _tokens.Report(StructuredTextDiagnostics.Expected(token.Span, "a statement (there is no loop around this)", token.Shown));
            return null;
        }

        return new JumpSyntax(token.Is("EXIT") ? JumpKind.Exit : JumpKind.Continue, token.Span);
    }

    private StatementSyntax? AssignmentOrCall()
    {
        SourceSpan start = _tokens.Current.Span;
        if (_tokens.Current.Kind == TokenKind.Address)
        {
            _tokens.Lose(StructuredTextDiagnostics.NotSupportedYet(start, "an address inside a statement"));
            return null;
        }

        PathSyntax path = _expressions.Path();
        if (_tokens.IsLost)
        {
            return null;
        }

        if (_tokens.At("("))
        {
            ImmutableArray<ArgumentSyntax> arguments = _expressions.Arguments();
            return new CallStatementSyntax(path, arguments, _tokens.Since(start));
        }

        if (!_tokens.TryTake(":="))
        {
            _tokens.Lose("`:=` or `(`");
            return null;
        }

        ExpressionSyntax value = _expressions.Expression();
        return new AssignmentSyntax(path, value, _tokens.Since(start));
    }

    private IfSyntax If()
    {
        SourceSpan start = _tokens.Current.Span;
        ImmutableArray<IfBranchSyntax>.Builder branches = ImmutableArray.CreateBuilder<IfBranchSyntax>();
        do
        {
            _tokens.Take();
            ExpressionSyntax condition = _expressions.Expression();
            Find("THEN");
            branches.Add(new IfBranchSyntax(condition, Body()));
        }
        while (!_tokens.IsLost && _tokens.At("ELSIF"));

        ImmutableArray<StatementSyntax> otherwise = _tokens.TryTake("ELSE") ? Body() : [];
        _tokens.Expect("END_IF");
        return new IfSyntax(branches.ToImmutable(), otherwise, _tokens.Since(start));
    }

    private ImmutableArray<StatementSyntax> Body() => _tokens.IsLost ? [] : Statements();

    /// <summary>A broken condition does not spoil the branch behind it.</summary>
    private void Find(string word) => _tokens.ExpectOrFind(word, Stops);

    private CaseSyntax Case()
    {
        SourceSpan start = _tokens.Take().Span;
        ExpressionSyntax selector = _expressions.Expression();
        Find("OF");
        ImmutableArray<CaseBranchSyntax>.Builder branches = ImmutableArray.CreateBuilder<CaseBranchSyntax>();
        while (!_tokens.IsLost && !_tokens.AtEnd && !_tokens.AtAny(Stops))
        {
            ImmutableArray<CaseLabelSyntax> labels = Labels();
            Find(":");
            branches.Add(new CaseBranchSyntax(labels, _tokens.IsLost ? [] : Statements(AtLabel)));
        }

        ImmutableArray<StatementSyntax> otherwise = _tokens.TryTake("ELSE") ? Body() : [];
        _tokens.Expect("END_CASE");
        return new CaseSyntax(selector, branches.ToImmutable(), otherwise, _tokens.Since(start));
    }

    /// <summary>A statement never begins with a number, nor has it <c>:</c>, <c>,</c> or <c>..</c> behind its first name.</summary>
    private bool AtLabel() =>
        _tokens.Current.Kind is TokenKind.Integer or TokenKind.TypePrefix or TokenKind.Duration || _tokens.At("-")
        || (_tokens.Current.Kind == TokenKind.Name && (_tokens.Next.Is(":") || _tokens.Next.Is(",") || _tokens.Next.Is("..")));

    private ImmutableArray<CaseLabelSyntax> Labels()
    {
        ImmutableArray<CaseLabelSyntax>.Builder labels = ImmutableArray.CreateBuilder<CaseLabelSyntax>();
        do
        {
            SourceSpan start = _tokens.Current.Span;
            ExpressionSyntax lower = _expressions.Expression();
            ExpressionSyntax? upper = _tokens.TryTake("..") ? _expressions.Expression() : null;
            labels.Add(new CaseLabelSyntax(lower, upper, _tokens.Since(start)));
        }
        while (_tokens.TryTake(","));
        return labels.ToImmutable();
    }

    private ForSyntax For()
    {
        SourceSpan start = _tokens.Take().Span;
        NameSyntax variable = _expressions.Name("the loop's variable");
        _tokens.Expect(":=");
        ExpressionSyntax from = _expressions.Expression();
        _tokens.Expect("TO");
        ExpressionSyntax to = _expressions.Expression();
        ExpressionSyntax? by = _tokens.TryTake("BY") ? _expressions.Expression() : null;
        Find("DO");
        ImmutableArray<StatementSyntax> body = LoopBody();
        _tokens.Expect("END_FOR");
        return new ForSyntax(variable, from, to, by, body, _tokens.Since(start));
    }

    private WhileSyntax While()
    {
        SourceSpan start = _tokens.Take().Span;
        ExpressionSyntax condition = _expressions.Expression();
        Find("DO");
        ImmutableArray<StatementSyntax> body = LoopBody();
        _tokens.Expect("END_WHILE");
        return new WhileSyntax(condition, body, _tokens.Since(start));
    }

    private RepeatSyntax Repeat()
    {
        SourceSpan start = _tokens.Take().Span;
        ImmutableArray<StatementSyntax> body = LoopBody();
        _tokens.Expect("UNTIL");
        ExpressionSyntax until = _expressions.Expression();
        _tokens.TryTake(";");
        _tokens.Expect("END_REPEAT");
        return new RepeatSyntax(body, until, _tokens.Since(start));
    }

    private ImmutableArray<StatementSyntax> LoopBody()
    {
        _loops++;
        ImmutableArray<StatementSyntax> body = Body();
        _loops--;
        return body;
    }
}
