using System.Globalization;
using System.Text;
using Sequencer.Testing;

namespace Sequencer.StructuredText.Tests.Pascal;

/// <summary>
/// Rules of IEC 61131-3 (clauses from memory: 6.6.3.5 of the third edition for the blocks, 7.3.2 and 7.3.3 for expressions and statements)
/// as our reader has them beside what the Free Pascal compiler makes of the same text. Where Pascal has another rule of its own, in precedence and in
/// the blocks, the judge is what is written from the standard's tables and diagrams under <c>tests/Sequencer.Testing/Pascal</c>.
/// </summary>
public sealed class RulesTests
{
    private const int Scans = 20_000;
    private const int Expressions = 120;

    private static string Rules => File.ReadAllText(RepositoryPath.At("tests", "Sequencer.StructuredText.Tests", "Pascal", "rules.st"));

    [Theory]
    [InlineData("TIMERS")]
    [InlineData("BLOCKS")]
    [InlineData("RULES")]
    [InlineData("LOOPS")]
    public void A_block_gives_in_every_scan_what_the_compiled_one_gives(string block) => Assert.Null(JudgedText.Difference(Rules, Rules, block, Scans));

    [Theory]
    [InlineData("TIMERS", "Pulse : TP", "Pulse : TON")]
    [InlineData("BLOCKS", "Set_First : SR", "Set_First : RS")]
    [InlineData("RULES", "4..6, 9:", "4..7, 9:")]
    [InlineData("LOOPS", "THEN CONTINUE;", "THEN EXIT;")]
    [InlineData("LOOPS", "UNTIL I >= N", "UNTIL I > N")]
    public void A_text_that_is_not_the_same_is_found(string block, string words, string others)
    {
        Assert.Contains(words, Rules, StringComparison.Ordinal);
        string changed = block == "BLOCKS"
            ? Rules.Replace(words, others, StringComparison.Ordinal).Replace("Set_First(S1 := A, R := B", "Set_First(S := A, R1 := B", StringComparison.Ordinal)
            : Rules.Replace(words, others, StringComparison.Ordinal);
        Assert.NotNull(JudgedText.Difference(Rules, changed, block, Scans));
    }

    /// <summary>IEC 61131-3, table "Operators of the ST language" (Table 55 of the second edition): no brackets but a few, so that the table decides.</summary>
    [Fact]
    public void Expressions_without_brackets_have_the_value_that_the_table_of_precedence_gives()
    {
        Random random = new(55);
        StringBuilder text = new("FUNCTION_BLOCK PRECEDENCE\nVAR_INPUT X : INT (-40..40); Y : INT (-9..9); A, B, C : BOOL; END_VAR\nVAR_OUTPUT\n");
        for (int index = 0; index < Expressions; index++)
        {
            text.Append(CultureInfo.InvariantCulture, $"  N{index} : DINT; L{index} : BOOL;\n");
        }

        text.Append("END_VAR\n");
        for (int index = 0; index < Expressions; index++)
        {
            text.Append(CultureInfo.InvariantCulture, $"N{index} := {Number(random)};\nL{index} := {Logic(random)};\n");
        }

        text.Append("END_FUNCTION_BLOCK\n");
        Assert.Null(JudgedText.Difference(text.ToString(), text.ToString(), "PRECEDENCE", 3000));
    }

    /// <summary>A product has one variable in it, a divisor is a constant: more the reader does not take.</summary>
    private static string Number(Random random)
    {
        StringBuilder text = new(Operand(random));
        int products = 0;
        for (int more = random.Next(1, 5); more > 0; more--)
        {
            text.Append(random.Next(6) switch
            {
                0 or 1 => $" + {Operand(random)}",
                2 => $" - {Operand(random)}",
                3 when products++ < 2 => random.Next(3) == 0 ? " * 2 ** 2" : string.Create(CultureInfo.InvariantCulture, $" * {random.Next(2, 5)}"),
                4 => string.Create(CultureInfo.InvariantCulture, $" / {random.Next(2, 7)}"),
                _ => string.Create(CultureInfo.InvariantCulture, $" MOD {random.Next(2, 7)}"),
            });
        }

        return text.ToString();
    }

    private static string Operand(Random random) => random.Next(7) switch
    {
        0 => "X",
        1 => "Y",
        2 => "-X",
        3 => "-Y",
        4 => "(X - Y)",
        5 => "-2 ** 2",
        _ => random.Next(1, 20).ToString(CultureInfo.InvariantCulture),
    };

    private static string Logic(Random random)
    {
        string[] operators = ["AND", "&", "OR", "XOR", "=", "<>"];
        StringBuilder text = new(Fact(random));
        for (int more = random.Next(1, 6); more > 0; more--)
        {
            text.Append(CultureInfo.InvariantCulture, $" {operators[random.Next(operators.Length)]} {Fact(random)}");
        }

        return text.ToString();
    }

    private static string Fact(Random random) => random.Next(9) switch
    {
        0 or 1 => "A",
        2 => "B",
        3 => "C",
        4 => "NOT A",
        5 => "NOT B",
        6 => "X + Y < Y * 2 - 1",
        7 => "Y >= -3",
        _ => "(A = B)",
    };
}
