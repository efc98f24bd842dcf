using Sequencer.Language.Programs;

namespace Sequencer.Export.Writing;

/// <summary>The program that wires the function blocks to inputs, outputs and the operator's station.</summary>
internal static class WiringText
{
    private const string Together = "All_Units";
    private const string Monitor = "Scan_Check";

    public static void Write(TextLines text, IReadOnlyList<UnitText> units, SiteBlockText? together, string program)
    {
        text.Add($"PROGRAM {program}");
        text.Comment("What the operator's station writes. What it shows are the outputs of the blocks.");
        Operator(text, units);
        text.Open("VAR_OUTPUT");
        text.Add("Scan_Overrun : BOOL;  (* scans were lost: the clocks of all units run slow *)");
        text.Close("END_VAR");
        GlobalText.Externals(text, units);
        Internal(text, units, together);
        text.Blank();
        text.Comment("Loop currents to readings");
        foreach (UnitText unit in units)
        {
            ScalingText.Inputs(text, unit.Unit);
        }

        text.Blank();
        text.Comment("Are scans lost?");
        text.Add($"{Monitor}(Clear := Clear_Scan_Overrun);");
        text.Add($"Scan_Overrun := {Monitor}.Overrun;");
        if (together is null)
        {
            foreach (UnitText unit in units)
            {
                Call(text, unit.Unit.Name, Arguments(unit, declaration => declaration.Name));
            }
        }
        else
        {
            Call(text, Together, units.SelectMany(unit => Arguments(unit, declaration => together.Terminal(unit, declaration))));
        }

        text.Blank();
        text.Comment("Outputs to coils and loop currents");
        foreach (UnitText unit in units)
        {
            Coils(text, unit, tag => together is null
                ? $"{unit.Unit.Name}.{unit.Names.Of(tag)}"
                : $"{Together}.{together.Terminal(unit, unit.Declarations.First(one => one.Path == tag && one.Section == VariableSection.Output))}");
        }

        text.Add("END_PROGRAM");
    }

    /// <summary>The inputs of a unit that the operator's station writes, with the names of the program's variables.</summary>
    /// <param name="unit">The unit.</param>
    /// <param name="isOneOfMany">Whether its variables are those of the block that holds all units.</param>
    public static IEnumerable<ExportedVariable> Operated(UnitText unit, bool isOneOfMany) => OperatorInputs(unit).Select(declaration =>
        new ExportedVariable(isOneOfMany ? SiteBlockText.Path(unit, declaration) : declaration.Path, $"{unit.Unit.Name}_{declaration.Name}"));

    private static void Operator(TextLines text, IReadOnlyList<UnitText> units)
    {
        text.Open("VAR_INPUT");
        text.Add("Clear_Scan_Overrun : BOOL;  (* operator: the overrun has been seen *)");
        foreach (UnitText unit in units)
        {
            foreach (Declaration declaration in OperatorInputs(unit))
            {
                text.Add($"{unit.Unit.Name}_{declaration.Name} : {declaration.Type};  (* {TextLines.Harmless(declaration.Comment)} *)");
            }
        }

        text.Close("END_VAR");
    }

    private static void Internal(TextLines text, IReadOnlyList<UnitText> units, SiteBlockText? together)
    {
        text.Open("VAR");
        text.Add($"{Monitor} : {TaskText.Monitor};");
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

            ScalingText.Declarations(text, unit.Unit);
        }

        text.Close("END_VAR");
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
            ScalingText.Output(text, output, value(output.Tag));
        }

        foreach (Output output in unit.Unit.Outputs)
        {
            text.Add($"{GlobalText.Name(output)} := {(output.DeEnergised ? $"NOT {value(output.Tag)}" : value(output.Tag))};");
        }
    }

    private static string Source(UnitText unit, Declaration declaration)
    {
        AnalogueInput? reading = unit.Unit.AnalogueInputs.FirstOrDefault(input => input.Tag == declaration.Path || $"{input.Tag}.fault" == declaration.Path);
        if (reading is not null)
        {
            return reading.Tag == declaration.Path ? ScalingText.Reading(reading) : ScalingText.Fault(reading);
        }

        SwitchInput? contact = unit.Unit.SwitchInputs.FirstOrDefault(input => $"{input.Tag}.contact" == declaration.Path);
        return contact is null ? $"{unit.Unit.Name}_{declaration.Name}" : GlobalText.Name(contact);
    }

    private static IEnumerable<Declaration> OperatorInputs(UnitText unit) => unit.Declarations.Where(declaration =>
        declaration.Section == VariableSection.Input
        && Source(unit, declaration) == $"{unit.Unit.Name}_{declaration.Name}");
}
