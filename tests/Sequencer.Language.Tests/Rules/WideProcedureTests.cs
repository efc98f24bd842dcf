using System.Globalization;
using System.Text;
using Sequencer.Language.Checking;
using Sequencer.Text;

namespace Sequencer.Language.Tests.Rules;

/// <summary>Procedures with more situations than are looked at one by one: twelve branches of three steps have 531,441.</summary>
public sealed class WideProcedureTests
{
    private const int Branches = 12;

    [Fact]
    public void Many_branches_that_are_opened_and_joined_together_are_no_mistake() => RuleProgram.IsSilentOn(Wide(""));

    [Fact]
    public void A_join_of_steps_that_follow_one_another_is_found_among_many_branches() => Assert.Equal(
        ["SEQ0402 at: join 100, 102 to 900 when LT1 < 0.100 m3"],
        Told("join 100, 102 to 900 when LT1 < 0.100 m3"));

    [Fact]
    public void Outputs_driven_both_ways_in_two_of_many_branches_are_found() => Assert.Contains(
        "SEQ0415 at: close XV1",
        Told("", "close XV1"));

    private static IEnumerable<string> Told(string join, string last = "run AG1") => ProgramChecker.Check(new SourceText("program.seq", Wide(join, last)), 100)
        .Diagnostics.Select(found => $"{found.Code} at: {found.Span.Text}");

    private static string Wide(string join, string last = "run AG1")
    {
        StringBuilder text = new("""
            language 1
            unit TK1 "Tank"
            input  LT1  0 .. 1.000 m3  at %IW0  "Tank volume"  bad after 2 s
            output XV1  valve  at %QX0.0  "Inlet"  safe closed
            output AG1  motor  at %QX0.1  "Agitator"  safe stopped
            procedure
            step 10 "Open"
            limit 30 min then hold "Slow"

            """);
        text.Append(CultureInfo.InvariantCulture, $"go {string.Join(" and ", Enumerable.Range(0, Branches).Select(branch => 100 + (10 * branch)))} when LT1 > 0.500 m3\n");
        for (int branch = 0; branch < Branches; branch++)
        {
            for (int step = 0; step < 3; step++)
            {
                int number = 100 + (10 * branch) + step;
                string action = branch == 0 ? "open XV1" : branch == Branches - 1 && step == 2 ? last : "run AG1";
                text.Append(CultureInfo.InvariantCulture, $"step {number} \"Branch {branch}\"\n{action}\nlimit 30 min then hold \"Slow\"\n");
                text.Append(step < 2 ? string.Create(CultureInfo.InvariantCulture, $"go {number + 1} when at step {number} stays 2 min\n") : "");
            }
        }

        text.Append(CultureInfo.InvariantCulture, $"join {string.Join(", ", Enumerable.Range(0, Branches).Select(branch => 102 + (10 * branch)))} to 900 when LT1 > 0.700 m3\n{join}\n");
        text.Append("step 900 \"End\"\nlimit 30 min then hold \"Slow\"\ngo finish when LT1 < 0.100 m3\n");
        return text.ToString();
    }
}
