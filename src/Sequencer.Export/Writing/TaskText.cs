using System.Globalization;
using Sequencer.Language.Units;

namespace Sequencer.Export.Writing;

/// <summary>The periodic task, and a check that it is called as often as it is declared to be.</summary>
internal static class TaskText
{
    public const string Monitor = "SCAN_MONITOR";

    private const int WindowMilliseconds = 10_000;

    /// <summary>Of the scans of a window this part may be missing before it is told.</summary>
    private const int OneIn = 50;

    /// <summary>
    /// All clocks of the units count scans, so that lost scans make every limit and every pulse too long. The standard has no
    /// function that says how long a scan took; its timers go by the controller's clock, and that is what scans are held against.
    /// </summary>
    public static void Block(TextLines text, int scanMilliseconds)
    {
        long window = Math.Max(WindowMilliseconds, (long)scanMilliseconds * OneIn);
        long expected = window / scanMilliseconds;
        // A turn takes the scans of its time, the one in which the timer is let go, and one more where its end falls between two.
        long most = expected + 2;
        long least = most - Math.Max(1, expected / OneIn);
        text.Comment("Are the scans as many as the task's INTERVAL says? The units' clocks count scans: where scans are lost, limits");
        text.Comment("and pulses last too long. A TON goes by the controller's clock; the scans of each turn of it are counted.");
        text.Comment("What the controller must supply: a TON that does not count scans itself; its own watchdog, which stops the");
        text.Comment("program and lets every output go to its de-energised position when a scan does not end at all; and retained");
        text.Comment("variables that are stored whole. A single late scan is not seen here; more than one lost in 50, over and over, is.");
        text.Comment("An overrun is told, and stays until it is cleared; whether it must also stop the plant is for the design to decide.");
        text.Add($"FUNCTION_BLOCK {Monitor}");
        text.Open("VAR_INPUT");
        text.Add("Clear : BOOL;  (* operator: the overrun has been seen *)");
        text.Close("END_VAR");
        text.Open("VAR_OUTPUT");
        text.Add("Overrun : BOOL;  (* scans were lost *)");
        text.Close("END_VAR");
        text.Open("VAR");
        text.Add("Turn : TON;");
        text.Add(string.Create(CultureInfo.InvariantCulture, $"Scans : DINT(0..{most}) := 0;  (* scans in this turn *)"));
        text.Close("END_VAR");
        text.Add($"Turn(IN := NOT Turn.Q, PT := {DurationText.Of(new Duration(window))});");
        text.Open("IF NOT Turn.Q THEN");
        text.Add(UnitText.CountUp("Scans", most));
        text.Else(string.Create(CultureInfo.InvariantCulture, $"ELSIF Scans < {least} THEN"));
        text.Add("Overrun := TRUE;");
        text.Add("Scans := 0;");
        text.Else("ELSE");
        text.Add("Scans := 0;");
        text.Close("END_IF;");
        text.Add("IF Clear THEN Overrun := FALSE; END_IF;");
        text.Add("END_FUNCTION_BLOCK");
    }

    public static void Configuration(TextLines text, IReadOnlyList<UnitText> units, string program, int scanMilliseconds)
    {
        text.Open("CONFIGURATION Plant");
        GlobalText.Globals(text, units, together: units.Any(unit => unit.Dialect.Edition == TextEdition.Second));
        text.Open("RESOURCE Controller ON Processor");
        text.Add(string.Create(CultureInfo.InvariantCulture, $"TASK Scan(INTERVAL := T#{scanMilliseconds}ms, PRIORITY := 1);"));
        text.Add($"PROGRAM Main WITH Scan : {program};");
        text.Close("END_RESOURCE");
        text.Close("END_CONFIGURATION");
    }
}
