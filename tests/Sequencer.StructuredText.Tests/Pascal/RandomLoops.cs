using System.Collections.Immutable;

namespace Sequencer.StructuredText.Tests.Pascal;

/// <summary>
/// Random bodies of a block with loops, jumps and an array: X and Y are inputs, A, B and C outputs and List an array that are kept, all of them 0 to 20;
/// each loop counts with a variable of its own.
/// </summary>
internal sealed class RandomLoops
{
    public const string Declarations =
        """
        VAR_INPUT X, Y : INT (0..20); END_VAR
        VAR_OUTPUT A, B, C : INT (0..20); END_VAR
        VAR List : ARRAY [0..3] OF INT (0..20); END_VAR
        VAR_TEMP I0, I1, I2 : INT (-10..30); END_VAR

        """;

    private const int Deepest = 3;
    private static readonly string[] Names = ["X", "Y", "A", "B", "C"];

    private readonly Random _random;

    private RandomLoops(Random random) => _random = random;

    public static ImmutableArray<Piece> Make(int seed) => new RandomLoops(new Random(seed)).List(Deepest, 0);

    private ImmutableArray<Piece> List(int depth, int loops)
    {
        Piece[] pieces = new Piece[_random.Next(1, 4)];
        for (int place = 0; place < pieces.Length; place++)
        {
            pieces[place] = _random.Next(depth == 0 ? 3 : 9) switch
            {
                0 or 1 => Assignment(loops),
                2 => Jump(loops),
                3 => Choice(depth, loops),
                4 => Case(depth, loops),
                5 or 6 => For(depth, loops),
                7 => While(depth, loops),
                _ => Repeat(depth, loops),
            };
        }

        return [.. pieces];
    }

    private Piece Assignment(int loops)
    {
        string target = _random.Next(3) == 0 ? Element(loops) : Names[_random.Next(2, Names.Length)];
        return Piece.Leaf(FormattableString.Invariant($"{target} := LIMIT(0, {Value(loops)} - {Value(loops)} + {_random.Next(-3, 6)}, 20);"));
    }

    private Piece Jump(int loops)
    {
        string word = loops == 0 || _random.Next(6) == 0 ? "RETURN" : _random.Next(2) == 0 ? "EXIT" : "CONTINUE";
        return Piece.Leaf($"IF {Condition(loops)} THEN {word}; END_IF;");
    }

    private Piece Choice(int depth, int loops) =>
        new("", [($"IF {Condition(loops)} THEN", List(depth - 1, loops)), ("ELSE", List(depth - 1, loops))], "END_IF;");

    private Piece Case(int depth, int loops) =>
        new(
            $"CASE {Value(loops)} OF\n",
            [
                (FormattableString.Invariant($"{_random.Next(0, 5)}:"), List(depth - 1, loops)),
                (FormattableString.Invariant($"{_random.Next(5, 8)}..{_random.Next(8, 12)}, 15:"), List(depth - 1, loops)),
                ("ELSE", List(depth - 1, loops)),
            ],
            "END_CASE;");

    private Piece For(int depth, int loops)
    {
        bool down = _random.Next(3) == 0;
        int first = _random.Next(0, 4);
        string head = down
            ? FormattableString.Invariant($"FOR I{loops} := {first + 3} TO {first} BY -{_random.Next(1, 3)} DO")
            : FormattableString.Invariant($"FOR I{loops} := {first} TO {first + _random.Next(-1, 5)} BY {_random.Next(1, 4)} DO");
        return new Piece("", [(head, List(depth - 1, loops + 1))], "END_FOR;");
    }

    private Piece While(int depth, int loops) =>
        new(
            FormattableString.Invariant($"I{loops} := 0;\n"),
            [(FormattableString.Invariant($"WHILE I{loops} < {_random.Next(0, 5)} AND NOT ({Condition(loops)}) DO I{loops} := I{loops} + 1;"), List(depth - 1, loops + 1))],
            "END_WHILE;");

    private Piece Repeat(int depth, int loops) =>
        new(
            FormattableString.Invariant($"I{loops} := 0;\n"),
            [(FormattableString.Invariant($"REPEAT I{loops} := I{loops} + 1;"), List(depth - 1, loops + 1))],
            FormattableString.Invariant($"UNTIL I{loops} >= {_random.Next(1, 5)} OR {Condition(loops)} END_REPEAT;"));

    private string Condition(int loops) => _random.Next(3) switch
    {
        0 => $"{Value(loops)} < {Value(loops)}",
        1 => FormattableString.Invariant($"{Value(loops)} >= {_random.Next(0, 20)} AND {Value(loops)} <> {_random.Next(0, 20)}"),
        _ => FormattableString.Invariant($"{Value(loops)} = {_random.Next(0, 8)} OR {Value(loops)} > {_random.Next(8, 20)}"),
    };

    private string Value(int loops) => _random.Next(5) switch
    {
        0 => Element(loops),
        1 when loops > 0 => FormattableString.Invariant($"I{_random.Next(loops)}"),
        _ => Names[_random.Next(Names.Length)],
    };

    private string Element(int loops) => _random.Next(3) switch
    {
        0 => FormattableString.Invariant($"List[{_random.Next(4)}]"),
        1 when loops > 0 => FormattableString.Invariant($"List[LIMIT(0, I{_random.Next(loops)}, 3)]"),
        _ => $"List[{Names[_random.Next(Names.Length)]} MOD 4]",
    };
}
