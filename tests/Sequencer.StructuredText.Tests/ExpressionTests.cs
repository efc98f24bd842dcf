using System.Globalization;
using CsCheck;
using Sequencer.Testing;

namespace Sequencer.StructuredText.Tests;

/// <summary>IEC 61131-3 (second edition) Table 55 (precedence) and Annex B.3; division and MOD from memory of Table 24.</summary>
public sealed class ExpressionTests
{
    [Theory]
    [InlineData("A + B - C * ABS(D)", -9)]
    [InlineData("(A + B - C) * ABS(D)", 0)]
    [InlineData("-2 ** 2", 4)]
    [InlineData("2 ** 3 ** 2", 64)]
    [InlineData("-(2 ** 2)", -4)]
    [InlineData("10 - 4 - 3", 3)]
    [InlineData("100 / 10 / 5", 2)]
    [InlineData("7 * 3 / 2", 10)]
    [InlineData("2 + 3 * 4", 14)]
    [InlineData("2 * 3 ** 2", 18)]
    [InlineData("7 MOD 4 * 2", 6)]
    [InlineData("-A + B", 1)]
    public void Operators_bind_as_the_table_says(string expression, long value) => Assert.Equal(value, Value(expression));

    [Theory]
    [InlineData("TRUE OR TRUE AND FALSE", 1)]
    [InlineData("TRUE OR TRUE XOR TRUE", 1)]
    [InlineData("TRUE XOR TRUE AND FALSE", 1)]
    [InlineData("NOT FALSE AND FALSE", 0)]
    [InlineData("NOT FALSE OR TRUE", 1)]
    [InlineData("FALSE & TRUE OR TRUE", 1)]
    [InlineData("1 < 2 = TRUE", 1)]
    [InlineData("A + 1 = B AND C > B", 1)]
    [InlineData("1 = 2 OR 3 <> 4", 1)]
    [InlineData("2 >= 2 AND 2 <= 2 AND NOT (2 > 2) AND NOT (2 < 2)", 1)]
    [InlineData("NOT TRUE = FALSE", 1)]
    public void Comparisons_bind_tighter_than_logic(string expression, long value) => Assert.Equal(value, Value(expression, "BOOL"));

    [Theory]
    [InlineData("7 / 3", 2)]
    [InlineData("-7 / 3", -2)]
    [InlineData("7 / (-3)", -2)]
    [InlineData("-7 MOD 3", -1)]
    [InlineData("7 MOD INT#-3", 1)]
    [InlineData("7 / INT#-3", -2)]
    public void Division_is_cut_off_towards_zero(string expression, long value) => Assert.Equal(value, Value(expression));

    [Fact]
    public void A_variable_divides_by_any_constant_as_a_number_does()
    {
        Gen.Select(Gen.Int[-40, 40], Gen.Int[-300, 300]).SampleRepeatably(
            (divisor, dividend) =>
            {
                if (divisor == 0)
                {
                    return;
                }

                Scans text = Scans.Of(FormattableString.Invariant(
                    $"PROGRAM P VAR_INPUT X : INT (-300..300); END_VAR VAR_OUTPUT Q : INT; R : INT; END_VAR Q := X / ({divisor}); R := X MOD ({divisor}); END_PROGRAM"));
                text.Scan(("X", dividend));
                Assert.Equal(dividend / divisor, text["Q"]);
                Assert.Equal(dividend % divisor, text["R"]);
            },
            iterations: 300);
    }

    [Fact]
    public void Random_expressions_have_the_value_that_arithmetic_gives_them()
    {
        Gen.Select(Gen.Int[0, int.MaxValue], Gen.Int[-9, 9], Gen.Int[-9, 9]).SampleRepeatably(
            (seed, x, y) =>
            {
                (string text, long value) = Random(new Random(seed), 4, x, y);
                Scans scans = Scans.Of(
                    $"PROGRAM P VAR_INPUT X : DINT (-9..9); Y : DINT (-9..9); END_VAR VAR_OUTPUT Q : DINT; END_VAR Q := {text}; END_PROGRAM");
                Assert.Equal(value, scans.Scan(("X", x), ("Y", y))["Q"]);
            },
            iterations: 300);
    }

    [Theory]
    [InlineData("MIN(A, B)", 1)]
    [InlineData("MAX(A, C, B)", 3)]
    [InlineData("LIMIT(2, A, 3)", 2)]
    [InlineData("LIMIT(MN := 0, IN := D, MX := 3)", 3)]
    [InlineData("SEL(FALSE, A, B)", 1)]
    [InlineData("SEL(TRUE, A, B)", 2)]
    [InlineData("ABS(A - D)", 3)]
    [InlineData("MOVE(C)", 3)]
    [InlineData("BOOL_TO_INT(A < B)", 1)]
    [InlineData("WORD_TO_INT(16#FFFF)", -1)]
    public void Standard_functions_give_their_values(string expression, long value) => Assert.Equal(value, Value(expression));

    [Fact]
    public void A_time_is_a_number_of_milliseconds()
    {
        Assert.Equal(1, Value("T#1m30s + T#500ms > T#90s AND T#3s / 2 = T#1500ms AND 2 * T#1s = T#2s", "BOOL"));
    }

    /// <summary>The value of an expression over A = 1, B = 2, C = 3, D = 4.</summary>
    internal static long Value(string expression, string type = "DINT")
    {
        Scans text = Scans.Of(
            $"PROGRAM P VAR CONSTANT A : DINT := 1; B : DINT := 2; C : DINT := 3; D : DINT := 4; END_VAR VAR_OUTPUT Q : {type}; END_VAR Q := {expression}; END_PROGRAM");
        return text.Scan()["Q"];
    }

    /// <summary>An expression with its value, evaluated here a second time, by C#'s own arithmetic.</summary>
    private static (string Text, long Value) Random(Random random, int depth, int x, int y)
    {
        if (depth == 0)
        {
            int literal = random.Next(-9, 10);
            return random.Next(3) switch
            {
                0 => ("X", x),
                1 => ("Y", y),
                _ => ($"({literal.ToString(CultureInfo.InvariantCulture)})", literal),
            };
        }

        (string left, long leftValue) = Random(random, depth - 1, x, y);
        (string right, long rightValue) = Random(random, depth - 1, x, y);
        int constant = random.Next(1, 5) * (random.Next(2) == 0 ? 1 : -1);
        return random.Next(8) switch
        {
            0 or 1 => ($"({left} + {right})", leftValue + rightValue),
            2 => ($"({left} - {right})", leftValue - rightValue),
            3 => (FormattableString.Invariant($"({left} * ({constant}))"), leftValue * constant),
            4 => (FormattableString.Invariant($"({left} / ({constant}))"), leftValue / constant),
            5 => (FormattableString.Invariant($"({left} MOD ({constant}))"), leftValue % constant),
            6 => ($"SEL({left} <= {right}, {left}, {right})", leftValue <= rightValue ? rightValue : leftValue),
            _ => ($"LIMIT(-5, {left}, 5)", Math.Clamp(leftValue, -5, 5)),
        };
    }
}
