using System.Collections.Immutable;
using System.Globalization;
using System.Text;

namespace Sequencer.Testing.Pascal;

/// <summary>
/// Rewrites structured text to Free Pascal, token by token, so that another compiler says what it means. What Pascal has not is taken
/// from <c>StandardBlocks.pas</c>. A block is an object with two procedures: <c>Power</c> gives first values (all of them, or those that a
/// loss of power takes), <c>Call</c> is its body. Subranges stay subranges: the running program stops where a value leaves one.
/// </summary>
public sealed class PascalRewriter
{
    private readonly TextTokens _tokens;
    private readonly Dictionary<string, PascalType> _types = PascalType.Elementary();
    private readonly Dictionary<string, string> _arrays = new(StringComparer.Ordinal);
    private readonly Dictionary<string, ImmutableArray<PascalVariable>> _blocks = new(StringComparer.OrdinalIgnoreCase);
    private readonly StringBuilder _text = new();

    private PascalRewriter(string text) => _tokens = new TextTokens(text);

    /// <exception cref="InvalidOperationException">The text has something that is not rewritten.</exception>
    public static PascalProgram Rewrite(string text)
    {
        PascalRewriter rewriter = new(text);
        rewriter.All();
        return new PascalProgram(rewriter._text.ToString(), rewriter._blocks.ToImmutableDictionary(StringComparer.OrdinalIgnoreCase));
    }

    private void All()
    {
        while (_tokens.Next.Kind != TextTokenKind.End)
        {
            if (_tokens.TakeIf("TYPE"))
            {
                while (!_tokens.TakeIf("END_TYPE"))
                {
                    DeclaredType();
                }
            }
            else if (_tokens.TakeIf("FUNCTION"))
            {
                Function();
            }
            else if (_tokens.TakeIf("FUNCTION_BLOCK"))
            {
                Block("END_FUNCTION_BLOCK");
            }
            else if (_tokens.TakeIf("PROGRAM"))
            {
                Block("END_PROGRAM");
            }
            else if (_tokens.TakeIf("CONFIGURATION"))
            {
                // Tasks and resources say when a program is called; the lockstep calls it itself.
                while (!_tokens.TakeIf("END_CONFIGURATION"))
                {
                    _tokens.Take();
                }
            }
            else
            {
                throw new InvalidOperationException($"a declaration is expected, not {_tokens.Next}");
            }
        }
    }

    private void DeclaredType()
    {
        string name = _tokens.Name();
        _tokens.Expect(":");
        if (_tokens.TakeIf("STRUCT"))
        {
            _types[name] = Structure($"v_{name}");
            _tokens.Expect(";");
            return;
        }

        if (!_tokens.TakeIf("("))
        {
            PascalType other = Type();
            _types[name] = _tokens.TakeIf(":=") ? other with { Default = PascalExpressions.Read(_tokens) } : other;
            _tokens.Expect(";");
            return;
        }

        List<string> values = [];
        string? first = null;
        while (!_tokens.TakeIf(")"))
        {
            string value = PascalExpressions.Identifier(_tokens.Name());
            first ??= value;
            values.Add(_tokens.TakeIf(":=") ? $"{value} = {PascalExpressions.Number(_tokens.Take().Text)}" : value);
            _tokens.TakeIf(",");
        }

        string initial = _tokens.TakeIf(":=") ? PascalExpressions.Identifier(_tokens.Name()) : first!;
        _tokens.Expect(";");
        _types[name] = new PascalType($"v_{name}", PascalKind.Enumeration, initial);
        Line($"type v_{name} = ({string.Join(", ", values)});");
    }

    /// <summary>A type by its name, with the bounds of a subrange. A subrange begins with its lowest value (IEC 61131-3, from memory).</summary>
    private PascalType Type()
    {
        TextToken token = _tokens.Take();
        if (token.Is("ARRAY"))
        {
            return ArrayType();
        }

        PascalType type = _types.GetValueOrDefault(token.Text) ?? throw new InvalidOperationException($"{token} is no type that is rewritten");
        if (!_tokens.TakeIf("("))
        {
            return type;
        }

        string lowest = Bound();
        _tokens.Expect("..");
        string highest = Bound();
        _tokens.Expect(")");
        return new PascalType($"{lowest}..{highest}", PascalKind.Integer, lowest);

    }

    private string Bound() => (_tokens.TakeIf("-") ? "-" : "") + PascalExpressions.Number(_tokens.Take().Text);

    /// <summary>An array gets a name, as Pascal takes two of one form for two types else. Its elements begin with 0 or false.</summary>
    private PascalType ArrayType()
    {
        List<string> dimensions = [];
        _tokens.Expect("[");
        do
        {
            string lowest = Bound();
            _tokens.Expect("..");
            dimensions.Add($"{lowest}..{Bound()}");
        }
        while (_tokens.TakeIf(","));
        _tokens.Expect("]");
        _tokens.Expect("OF");
        string form = $"array[{string.Join(", ", dimensions)}] of {Type().Text}";
        if (!_arrays.TryGetValue(form, out string? name))
        {
            name = string.Create(CultureInfo.InvariantCulture, $"array_{_arrays.Count}");
            _arrays.Add(form, name);
            Line($"type {name} = {form};");
        }

        return new PascalType(name, PascalKind.Compound, $"Default({name})");
    }

    private PascalType Structure(string name)
    {
        List<PascalVariable> fields = [];
        while (!_tokens.TakeIf("END_STRUCT"))
        {
            fields.AddRange(Declared("STRUCT"));
        }

        Line($"type {name} = record");
        Declare([.. fields]);
        Line("end;");
        return new PascalType(name, PascalKind.Compound, $"Default({name})");
    }

    private void Block(string end)
    {
        string name = _tokens.Name();
        PascalVariable[] variables = Variables();
        PascalVariable[] members = [.. variables.Where(variable => !variable.IsTemporary && !variable.IsConstant)];
        PascalStatements statements = new(_tokens);
        string body = statements.Read();
        _tokens.Expect(end);
        _types[name] = PascalType.Block(name);
        _blocks[name] = [.. members];

        Line($"type v_{name} = object");
        Declare(members);
        Line("  procedure Power(cold, kept: Boolean);");
        Line("  procedure Call;");
        Line("end;");
        Line($"procedure v_{name}.Power(cold, kept: Boolean);");
        Line("begin");
        foreach (PascalVariable member in members)
        {
            string survives = member.Section.EndsWith(" NON_RETAIN", StringComparison.OrdinalIgnoreCase) ? "False" : member.IsRetained ? "True" : "kept";
            Line(member.Type.Kind == PascalKind.Block
                ? $"  v_{member.Name}.Power(cold, {survives});"
                : $"  if cold or not {survives} then v_{member.Name} := {member.Initial};");
        }

        Line("end;");
        Line($"procedure v_{name}.Call;");
        Array.ForEach(variables, variable => _text.Append(variable.IsConstant ? $"const v_{variable.Name} = {variable.Initial};\n" : ""));
        Locals([.. variables.Where(variable => variable.IsTemporary)], statements.Bounds);
        Line("begin");
        _text.Append(body);
        Line("end;");
    }

    private void Function()
    {
        string name = _tokens.Name();
        _tokens.Expect(":");
        PascalType result = Type();
        PascalVariable[] variables = Variables();
        PascalVariable[] locals = [.. variables.Where(variable => !variable.IsInput)];
        PascalStatements statements = new(_tokens);
        string body = statements.Read();
        _tokens.Expect("END_FUNCTION");
        Line($"function v_{name}({string.Join("; ", variables.Where(variable => variable.IsInput).Select(variable => $"v_{variable.Name}: {variable.Type.Text}"))}): {result.Text};");
        Locals(locals, statements.Bounds);
        Line("begin");
        Line($"  v_{name} := {result.Default};");
        Array.ForEach(locals, variable => Line($"  v_{variable.Name} := {variable.Initial};"));
        _text.Append(body);
        Line("end;");
    }

    private PascalVariable[] Variables()
    {
        List<PascalVariable> variables = [];
        while (_tokens.Next.Text.StartsWith("VAR", StringComparison.OrdinalIgnoreCase) && _tokens.Ahead(1).Kind == TextTokenKind.Name && !_tokens.Ahead(1).Is(":="))
        {
            string section = _tokens.Name();
            if (_tokens.Next.Is("RETAIN") || _tokens.Next.Is("NON_RETAIN") || _tokens.Next.Is("CONSTANT"))
            {
                section += " " + _tokens.Name();
            }

            while (!_tokens.TakeIf("END_VAR"))
            {
                variables.AddRange(Declared(section));
            }
        }

        return [.. variables];
    }

    private List<PascalVariable> Declared(string section)
    {
        List<string> names = [_tokens.Name()];
        while (_tokens.TakeIf(","))
        {
            names.Add(_tokens.Name());
        }

        if (_tokens.TakeIf("AT"))
        {
            _tokens.Take();
        }

        _tokens.Expect(":");
        PascalType type = Type();
        string initial = _tokens.TakeIf(":=") ? PascalExpressions.Read(_tokens) : type.Default;
        _tokens.Expect(";");
        return [.. names.Select(name => new PascalVariable(name, section, type, initial))];
    }

    private void Locals(PascalVariable[] variables, List<string> bounds)
    {
        if (variables.Length + bounds.Count > 0)
        {
            Line("var");
            Declare(variables);
            bounds.ForEach(bound => Line($"  {bound}: Int64;"));
        }
    }

    private void Declare(PascalVariable[] variables) => Array.ForEach(variables, variable => Line($"  v_{variable.Name}: {variable.Type.Text};"));

    private void Line(string line) => _text.Append(CultureInfo.InvariantCulture, $"{line}\n");
}
