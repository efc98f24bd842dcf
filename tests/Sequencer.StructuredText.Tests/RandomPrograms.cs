using System.Globalization;
using System.Text;

namespace Sequencer.StructuredText.Tests;

/// <summary>
/// Random programs over numbers 0 to 20, as text and as actions of C# on an array: two roads to one meaning.
/// </summary>
internal sealed class RandomPrograms
{
    public const int Most = 20;

    /// <summary>X and Y are inputs; A, B and C are kept; T is a VAR_TEMP, assigned first.</summary>
    public static readonly string[] Names = ["X", "Y", "A", "B", "C", "T"];

    private readonly Random _random;
    private readonly StringBuilder _text = new();

    private RandomPrograms(Random random)
    {
        _random = random;
    }

    public static (string Text, Action<long[]> Run) Make(int seed)
    {
        RandomPrograms maker = new(new Random(seed));
        maker._text.Append("PROGRAM P\nVAR_INPUT X, Y : INT (0..20); END_VAR\nVAR_OUTPUT A, B, C : INT (0..20); END_VAR\nVAR_TEMP T : INT (0..20); END_VAR\nT := 3;\n");
        Action<long[]> body = maker.Statements(3);
        maker._text.Append("END_PROGRAM\n");
        return (maker._text.ToString(), values =>
        {
            values[5] = 3;
            body(values);
        }
        );
    }

    private Action<long[]> Statements(int depth)
    {
        Action<long[]>[] actions = new Action<long[]>[_random.Next(1, 4)];
        for (int index = 0; index < actions.Length; index++)
        {
            actions[index] = _random.Next(depth == 0 ? 1 : 4) switch
            {
                0 => Assignment(),
                1 or 2 => Choice(depth),
                _ => Case(depth),
            };
        }

        return values => Array.ForEach(actions, action => action(values));
    }

    private Action<long[]> Assignment()
    {
        int target = _random.Next(2, Names.Length);
        int left = _random.Next(Names.Length);
        int right = _random.Next(Names.Length);
        int constant = _random.Next(-3, 4);
        int divisor = _random.Next(1, 4);
        _text.Append(CultureInfo.InvariantCulture, $"{Names[target]} := LIMIT(0, ({Names[left]} - {Names[right]} * {constant}) / {divisor} + {constant}, {Most});\n");
        return values => values[target] = Math.Clamp(((values[left] - (values[right] * constant)) / divisor) + constant, 0, Most);
    }

    private Action<long[]> Choice(int depth)
    {
        _text.Append("IF ");
        Func<long[], bool> first = Condition();
        _text.Append(" THEN\n");
        Action<long[]> then = Statements(depth - 1);
        _text.Append("ELSIF ");
        Func<long[], bool> second = Condition();
        _text.Append(" THEN\n");
        Action<long[]> orElse = Statements(depth - 1);
        Action<long[]> otherwise = _ => { };
        if (_random.Next(2) == 0)
        {
            _text.Append("ELSE\n");
            otherwise = Statements(depth - 1);
        }

        _text.Append("END_IF;\n");
        return values => (first(values) ? then : second(values) ? orElse : otherwise)(values);
    }

    private Func<long[], bool> Condition()
    {
        int left = _random.Next(Names.Length);
        int right = _random.Next(Names.Length);
        int constant = _random.Next(0, Most);
        int kind = _random.Next(4);
        string text = kind switch
        {
            0 => FormattableString.Invariant($"{Names[left]} < {Names[right]}"),
            1 => FormattableString.Invariant($"{Names[left]} >= {constant} AND NOT ({Names[right]} = {constant})"),
            2 => FormattableString.Invariant($"{Names[left]} <> {Names[right]} OR {Names[left]} > {constant}"),
            _ => FormattableString.Invariant($"{Names[left]} = {constant} XOR {Names[right]} <= {constant}"),
        };
        _text.Append(text);
        return values => kind switch
        {
            0 => values[left] < values[right],
            1 => values[left] >= constant && values[right] != constant,
            2 => values[left] != values[right] || values[left] > constant,
            _ => (values[left] == constant) ^ (values[right] <= constant),
        };
    }

    private Action<long[]> Case(int depth)
    {
        int selector = _random.Next(Names.Length);
        int single = _random.Next(0, 8);
        int lower = _random.Next(8, 12);
        int upper = lower + _random.Next(0, 6);
        _text.Append(CultureInfo.InvariantCulture, $"CASE {Names[selector]} OF\n{single}: ");
        Action<long[]> first = Statements(depth - 1);
        _text.Append(CultureInfo.InvariantCulture, $"{lower}..{upper}, 20: ");
        Action<long[]> second = Statements(depth - 1);
        _text.Append("ELSE ");
        Action<long[]> otherwise = Statements(depth - 1);
        _text.Append("END_CASE;\n");
        return values => (values[selector] == single ? first
            : (values[selector] >= lower && values[selector] <= upper) || values[selector] == 20 ? second
            : otherwise)(values);
    }
}
