using System.Globalization;
using Sequencer.Language.Programs;

namespace Sequencer.Export.Writing;

/// <summary>
/// The program that wires the function blocks to located variables, with the one visible block that
/// scales loop currents, and the task that calls it.
/// </summary>
internal static class WiringText
{
    private const string Together = "All_Units";

    public static void Write(TextLines text, IReadOnlyList<UnitText> units, SiteBlockText? together, string program, int scanMilliseconds)
    {
        text.Comment("Words of analogue inputs carry microamperes: 4000 and 20000 are the ends of the range.");
        text.Comment("Failure by NAMUR NE 43: 3600 and below, 21000 and above; between 3600 and 3800 and between");
        text.Comment("20500 and 21000 the last quality is kept. Change this block where a card counts otherwise.");
        text.Open($"PROGRAM {program}");
        text.Leave();
        Operator(text, units);
        Located(text, units);
        Internal(text, units, together);
        foreach (UnitText unit in units)
        {
            Scaling(text, unit);
            if (together is null)
            {
                Call(text, unit.Unit.Name, Arguments(unit, declaration => declaration.Name));
                Coils(text, unit, tag => $"{unit.Unit.Name}.{unit.Names.Of(tag)}");
            }
        }

        if (together is not null)
        {
            Call(text, Together, units.SelectMany(unit => Arguments(unit, declaration => together.Terminal(unit, declaration))));
            foreach (UnitText unit in units)
            {
                Coils(text, unit, tag => $"{Together}.{together.Terminal(unit, unit.Declarations.First(one => one.Path == tag && one.Section == VariableSection.Output))}");
            }
        }

        text.Add("END_PROGRAM");
        text.Blank();
        text.Open("CONFIGURATION Plant");
        text.Open("RESOURCE Controller ON Processor");
        text.Add(string.Create(CultureInfo.InvariantCulture, $"TASK Scan(INTERVAL := T#{scanMilliseconds}ms, PRIORITY := 1);"));
        text.Add($"PROGRAM Main WITH Scan : {program};");
        text.Close("END_RESOURCE");
        text.Close("END_CONFIGURATION");
    }

    private static void Operator(TextLines text, IReadOnlyList<UnitText> units)
    {
        text.Open("VAR_INPUT");
        foreach (UnitText unit in units)
        {
            foreach (Declaration declaration in OperatorInputs(unit))
            {
                text.Add($"{unit.Unit.Name}_{declaration.Name} : {declaration.Type};  (* {TextLines.Harmless(declaration.Comment)} *)");
            }
        }

        text.Close("END_VAR");
    }

    private static void Located(TextLines text, IReadOnlyList<UnitText> units)
    {
        text.Open("VAR");
        foreach (UnitText unit in units)
        {
            foreach (AnalogueInput input in unit.Unit.AnalogueInputs)
            {
                text.Add($"{input.Tag}_Raw AT {input.Address} : INT;  (* {TextLines.Harmless(input.Description)}, microamperes *)");
            }

            foreach (SwitchInput input in unit.Unit.SwitchInputs)
            {
                text.Add($"{input.Tag}_Contact AT {input.Address} : BOOL;  (* {TextLines.Harmless(input.Description)}, {(input.NormallyClosed ? "normally closed" : "normally open")} *)");
            }

            foreach (AnalogueOutput output in unit.Unit.AnalogueOutputs)
            {
                text.Add($"{output.Tag}_Raw AT {output.Address} : INT;  (* {TextLines.Harmless(output.Description)}, microamperes *)");
            }

            foreach (Output output in unit.Unit.Outputs)
            {
                text.Add($"{output.Tag}_Coil AT {output.Address} : BOOL;  (* {TextLines.Harmless(output.Description)}, de-energised is {Position(output)} *)");
            }
        }

        text.Close("END_VAR");
    }

    private static void Internal(TextLines text, IReadOnlyList<UnitText> units, SiteBlockText? together)
    {
        text.Open("VAR");
        if (together is not null)
        {
            text.Add($"{Together} : {SiteBlockText.BlockName};");
        }

        foreach (UnitText unit in units)
        {
            if (together is null)
            {
                text.Add($"{unit.Unit.Name} : {unit.BlockName};");
            }

            foreach (AnalogueInput input in unit.Unit.AnalogueInputs)
            {
                text.Add(string.Create(CultureInfo.InvariantCulture, $"{input.Tag}_Value : DINT({input.Minimum}..{input.Maximum}) := {input.Minimum};"));
                text.Add($"{input.Tag}_Fault : BOOL := TRUE;");
                text.Add($"{input.Tag}_Current : DINT;");
            }
        }

        text.Close("END_VAR");
    }

    /// <summary>Rounded to the nearest step: half a step is added before the division, which cuts off.</summary>
    private static void Scaling(TextLines text, UnitText unit)
    {
        text.Blank();
        text.Comment($"{unit.Unit.Name}: loop currents to readings");
        foreach (AnalogueInput input in unit.Unit.AnalogueInputs)
        {
            long span = input.Maximum - input.Minimum;
            string name = input.Tag;
            text.Add($"{name}_Current := LIMIT(4000, INT_TO_DINT({name}_Raw), 20000);");
            text.Add(string.Create(CultureInfo.InvariantCulture, $"{name}_Value := LIMIT({input.Minimum}, {input.Minimum} + (((({name}_Current - 4000) * {span}) + 8000) / 16000), {input.Maximum});"));
            text.Open($"IF ({name}_Raw <= 3600) OR ({name}_Raw >= 21000) THEN");
            text.Add($"{name}_Fault := TRUE;");
            text.Else($"ELSIF ({name}_Raw >= 3800) AND ({name}_Raw <= 20500) THEN");
            text.Add($"{name}_Fault := FALSE;");
            text.Close("END_IF;");
        }
    }

    private static IEnumerable<string> Arguments(UnitText unit, Func<Declaration, string> name) => unit.Declarations
        .Where(declaration => declaration.Section == VariableSection.Input)
        .Select(declaration => $"{name(declaration)} := {Source(unit, declaration)}");

    private static void Call(TextLines text, string instance, IEnumerable<string> arguments)
    {
        string[] all = [.. arguments];
        text.Blank();
        text.Open($"{instance}(");
        for (int index = 0; index < all.Length; index++)
        {
            text.Add(all[index] + (index == all.Length - 1 ? ");" : ","));
        }

        text.Leave();
    }

    private static void Coils(TextLines text, UnitText unit, Func<string, string> value)
    {
        foreach (AnalogueOutput output in unit.Unit.AnalogueOutputs)
        {
            long span = output.Maximum - output.Minimum;
            text.Add(string.Create(CultureInfo.InvariantCulture, $"{output.Tag}_Raw := DINT_TO_INT(LIMIT(4000, 4000 + (((({value(output.Tag)} - {output.Minimum}) * 16000) + {span / 2}) / {span}), 20000));"));
        }

        foreach (Output output in unit.Unit.Outputs)
        {
            text.Add($"{output.Tag}_Coil := {(output.DeEnergised ? $"NOT {value(output.Tag)}" : value(output.Tag))};");
        }
    }

    private static string Source(UnitText unit, Declaration declaration)
    {
        AnalogueInput? reading = unit.Unit.AnalogueInputs.FirstOrDefault(input => input.Tag == declaration.Path || $"{input.Tag}.fault" == declaration.Path);
        if (reading is not null)
        {
            return reading.Tag == declaration.Path ? $"{reading.Tag}_Value" : $"{reading.Tag}_Fault";
        }

        SwitchInput? contact = unit.Unit.SwitchInputs.FirstOrDefault(input => $"{input.Tag}.contact" == declaration.Path);
        return contact is null ? $"{unit.Unit.Name}_{declaration.Name}" : $"{contact.Tag}_Contact";
    }

    private static IEnumerable<Declaration> OperatorInputs(UnitText unit) => unit.Declarations.Where(declaration =>
        declaration.Section == VariableSection.Input
        && Source(unit, declaration) == $"{unit.Unit.Name}_{declaration.Name}");

    private static string Position(Output output) => (output.Kind, output.DeEnergised) switch
    {
        (OutputKind.Valve, true) => "open",
        (OutputKind.Valve, false) => "closed",
        (_, true) => "running",
        _ => "stopped",
    };
}
