using System.Globalization;
using Sequencer.Language.Programs;
using Sequencer.Language.Units;

namespace Sequencer.Export.Writing;

/// <summary>
/// Loop currents to readings and set values to loop currents: the one place where raw counts are scaled, written once as two
/// functions and a block that every channel uses.
/// </summary>
internal static class ScalingText
{
    private const string ToReading = "READING_OF_CURRENT";
    private const string ToCurrent = "CURRENT_OF_SETTING";
    private const string Quality = "LOOP_QUALITY";

    public static string Reading(AnalogueInput input) => $"{input.Tag}_Reading";

    public static string Fault(AnalogueInput input) => $"{Loop(input)}.Fault";

    public static string Range(AnalogueInput input) => Range(input.Minimum, input.Maximum, input.Resolution, input.Unit);

    public static string Range(AnalogueOutput output) => Range(output.Minimum, output.Maximum, output.Resolution, output.Unit);

    /// <summary>What the text needs for the channels that it has.</summary>
    public static void Blocks(TextLines text, IReadOnlyList<UnitText> units)
    {
        if (units.Any(unit => unit.Unit.AnalogueInputs.Length > 0))
        {
            text.Comment("A reading from a loop current: Low at 4 mA, High at 20 mA, rounded to the nearest step (half a step");
            text.Comment("is added before the division, which cuts off). Change it where a card counts otherwise.");
            text.Add($"FUNCTION {ToReading} : DINT");
            Inputs(text, "Microamperes : INT;", "Low : DINT;  (* the reading at 4 mA *)", "High : DINT;  (* the reading at 20 mA *)");
            Temporary(text, "Current : DINT;  (* kept between 4 and 20 mA *)");
            text.Add("Current := LIMIT(4000, INT_TO_DINT(Microamperes), 20000);");
            text.Add($"{ToReading} := Low + ((((Current - 4000) * (High - Low)) + 8000) / 16000);");
            text.Add("END_FUNCTION");
            text.Blank();
            text.Comment("Whether a loop is sound, by NAMUR NE 43: it failed at 3.6 mA and below and at 21 mA and above, it is sound");
            text.Comment("from 3.8 to 20.5 mA, between these what it was is kept. A loop is bad until it has been seen sound.");
            text.Add($"FUNCTION_BLOCK {Quality}");
            Inputs(text, "Microamperes : INT;");
            text.Open("VAR_OUTPUT");
            text.Add("Fault : BOOL := TRUE;");
            text.Close("END_VAR");
            text.Open("IF (Microamperes <= 3600) OR (Microamperes >= 21000) THEN");
            text.Add("Fault := TRUE;");
            text.Else("ELSIF (Microamperes >= 3800) AND (Microamperes <= 20500) THEN");
            text.Add("Fault := FALSE;");
            text.Close("END_IF;");
            text.Add("END_FUNCTION_BLOCK");
        }

        if (units.Any(unit => unit.Unit.AnalogueOutputs.Length > 0))
        {
            text.Blank();
            text.Comment("A loop current from a set value: 4 mA at Low, 20 mA at High, rounded to the nearest microampere.");
            text.Add($"FUNCTION {ToCurrent} : INT");
            Inputs(text, "Setting : DINT;", "Low : DINT;  (* the setting at 4 mA *)", "High : DINT;  (* the setting at 20 mA *)");
            Temporary(text, "Current : DINT;");
            text.Add("Current := 4000 + ((((Setting - Low) * 16000) + ((High - Low) / 2)) / (High - Low));");
            text.Add($"{ToCurrent} := DINT_TO_INT(LIMIT(4000, Current, 20000));");
            text.Add("END_FUNCTION");
        }
    }

    public static void Declarations(TextLines text, UnitProgram unit)
    {
        foreach (AnalogueInput input in unit.AnalogueInputs)
        {
            text.Add($"{Loop(input)} : {Quality};");
            text.Add($"{Reading(input)} : {UnitText.Range(input.Minimum, input.Maximum)} := {Number(input.Minimum)};");
        }
    }

    public static void Inputs(TextLines text, UnitProgram unit)
    {
        foreach (AnalogueInput input in unit.AnalogueInputs)
        {
            text.Comment($"{input.Tag} {input.Description}: {Range(input)}");
            text.Add($"{Loop(input)}(Microamperes := {GlobalText.Name(input)});");
            text.Add($"{Reading(input)} := {ToReading}(Microamperes := {GlobalText.Name(input)}, Low := {Number(input.Minimum)}, High := {Number(input.Maximum)});");
        }
    }

    public static void Output(TextLines text, AnalogueOutput output, string value) => text.Add(
        $"{GlobalText.Name(output)} := {ToCurrent}(Setting := {value}, Low := {Number(output.Minimum)}, High := {Number(output.Maximum)});");

    private static string Loop(AnalogueInput input) => $"{input.Tag}_Loop";

    private static string Number(long value) => value.ToString(CultureInfo.InvariantCulture);

    private static string Range(long minimum, long maximum, Rational resolution, Unit unit)
    {
        double step = (resolution / unit.Factor).ToDouble();
        return FormattableString.Invariant($"{minimum} at 4 mA, {maximum} at 20 mA, one is {step} {unit.Symbol}");
    }

    private static void Inputs(TextLines text, params ReadOnlySpan<string> lines) => Section(text, "VAR_INPUT", lines);

    private static void Temporary(TextLines text, string line) => Section(text, "VAR", line);

    private static void Section(TextLines text, string words, params ReadOnlySpan<string> lines)
    {
        text.Open(words);
        foreach (string line in lines)
        {
            text.Add(line);
        }

        text.Close("END_VAR");
    }
}
