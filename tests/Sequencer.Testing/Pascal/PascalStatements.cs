using System.Globalization;
using System.Text;

namespace Sequencer.Testing.Pascal;

/// <summary>Statements, token by token: each ends with a semicolon, each list stands between <c>begin</c> and <c>end</c>.</summary>
internal sealed class PascalStatements(TextTokens tokens)
{
    private static readonly string[] Ends =
        ["END_IF", "ELSIF", "ELSE", "END_CASE", "END_FOR", "END_WHILE", "END_REPEAT", "UNTIL", "END_FUNCTION_BLOCK", "END_FUNCTION", "END_PROGRAM"];

    private readonly StringBuilder _text = new();

    /// <summary>What a CONTINUE in the innermost loop does first: a FOR here counts at the end of its turn.</summary>
    private string _count = "";

    /// <summary>Where the bounds of FOR loops are kept; each is a local variable.</summary>
    public List<string> Bounds { get; } = [];

    /// <summary>All statements up to a word that ends a list.</summary>
    public string Read()
    {
        List();
        return _text.ToString();
    }

    private void List()
    {
        while (!Ends.Any(tokens.Next.Is) && !IsLabel())
        {
            One();
        }
    }

    private void One()
    {
        if (tokens.TakeIf(";"))
        {
            return;
        }

        if (tokens.TakeIf("IF"))
        {
            If();
        }
        else if (tokens.TakeIf("CASE"))
        {
            Case();
        }
        else if (tokens.TakeIf("FOR"))
        {
            For();
        }
        else if (tokens.TakeIf("WHILE"))
        {
            Line($"while {PascalExpressions.Read(tokens)} do begin");
            tokens.Expect("DO");
            Body("");
            tokens.Expect("END_WHILE");
            Line("end;");
        }
        else if (tokens.TakeIf("REPEAT"))
        {
            Line("repeat");
            Body("");
            tokens.Expect("UNTIL");
            Line($"until {PascalExpressions.Read(tokens)};");
            tokens.TakeIf(";");
            tokens.Expect("END_REPEAT");
        }
        else if (tokens.TakeIf("EXIT"))
        {
            Line("Break;");
        }
        else if (tokens.TakeIf("CONTINUE"))
        {
            Line($"begin {_count}Continue; end;");
        }
        else if (tokens.TakeIf("RETURN"))
        {
            Line("Exit;");
        }
        else
        {
            string path = PascalExpressions.Path(tokens);
            if (tokens.TakeIf(":="))
            {
                Line($"{path} := {PascalExpressions.Read(tokens)};");
            }
            else
            {
                Call(path);
            }
        }

        tokens.TakeIf(";");
    }

    /// <summary>What stands in a loop.</summary>
    private void Body(string count)
    {
        string around = _count;
        _count = count;
        List();
        _count = around;
    }

    private void If()
    {
        Line($"if {PascalExpressions.Read(tokens)} then begin");
        tokens.Expect("THEN");
        List();
        while (tokens.TakeIf("ELSIF"))
        {
            Line($"end else if {PascalExpressions.Read(tokens)} then begin");
            tokens.Expect("THEN");
            List();
        }

        if (tokens.TakeIf("ELSE"))
        {
            Line("end else begin");
            List();
        }

        tokens.Expect("END_IF");
        Line("end;");
    }

    private void Case()
    {
        Line($"case {PascalExpressions.Read(tokens)} of");
        tokens.Expect("OF");
        while (IsLabel())
        {
            StringBuilder labels = new();
            while (!tokens.TakeIf(":"))
            {
                TextToken token = tokens.Take();
                labels.Append(token.Kind switch
                {
                    TextTokenKind.Name => PascalExpressions.Identifier(token.Text),
                    TextTokenKind.Number => PascalExpressions.Number(token.Text),
                    _ => token.Text,
                });
            }

            Line($"{labels}: begin");
            List();
            Line("end;");
        }

        if (tokens.TakeIf("ELSE"))
        {
            Line("else");
            List();
        }

        tokens.Expect("END_CASE");
        Line("end;");
    }

    /// <summary>Bounds and step are taken once. A counter of Pascal may be no member of an object, so it counts in a loop of another kind.</summary>
    private void For()
    {
        string counter = PascalExpressions.Path(tokens);
        tokens.Expect(":=");
        string first = PascalExpressions.Read(tokens);
        tokens.Expect("TO");
        string last = PascalExpressions.Read(tokens);
        string step = tokens.TakeIf("BY") ? PascalExpressions.Read(tokens) : "1";
        tokens.Expect("DO");
        string bound = string.Create(CultureInfo.InvariantCulture, $"bound{Bounds.Count}");
        string by = string.Create(CultureInfo.InvariantCulture, $"by{Bounds.Count}");
        Bounds.AddRange([bound, by]);
        Line($"{counter} := {first}; {bound} := {last}; {by} := {step};");
        Line($"while (({by} > 0) and ({counter} <= {bound})) or (({by} < 0) and ({counter} >= {bound})) do begin");
        Body($"{counter} := {counter} + {by}; ");
        tokens.Expect("END_FOR");
        Line($"{counter} := {counter} + {by};");
        Line("end;");
    }

    /// <summary>The call of an instance: its inputs are set, it is called, its outputs are fetched.</summary>
    private void Call(string instance)
    {
        List<string> fetched = [];
        tokens.Expect("(");
        while (!tokens.TakeIf(")"))
        {
            string member = $"{instance}.{PascalExpressions.Identifier(tokens.Name())}";
            if (tokens.TakeIf(":="))
            {
                Line($"{member} := {PascalExpressions.Read(tokens)};");
            }
            else
            {
                tokens.Expect("=>");
                fetched.Add($"{PascalExpressions.Path(tokens)} := {member};");
            }

            tokens.TakeIf(",");
        }

        Line($"{instance}.Call;");
        fetched.ForEach(Line);
    }

    /// <summary>Constants with commas or two points between them, up to a colon.</summary>
    private bool IsLabel()
    {
        int place = 0;
        do
        {
            place += tokens.Ahead(place).Is("-") ? 1 : 0;
            if (tokens.Ahead(place++).Kind is not (TextTokenKind.Name or TextTokenKind.Number))
            {
                return false;
            }
        }
        while ((tokens.Ahead(place).Is(",") || tokens.Ahead(place).Is("..")) && place++ >= 0);

        return tokens.Ahead(place).Is(":");
    }

    private void Line(string line) => _text.Append(CultureInfo.InvariantCulture, $"  {line}\n");
}
