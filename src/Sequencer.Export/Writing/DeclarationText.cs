using Sequencer.Language.Programs;

namespace Sequencer.Export.Writing;

/// <summary>Types and the sections of variables.</summary>
internal static class DeclarationText
{
    public static void States(TextLines text)
    {
        text.Open("TYPE");
        text.Comment("the procedural states of IEC 61512-1; Pausing, Paused and Resuming are not used");
        text.Open($"{StateText.TypeName} :");
        List(text, Enum.GetValues<ProceduralState>().Select(StateText.Value));
        text.Leave();
        text.Close("END_TYPE");
    }

    public static void Steps(TextLines text, UnitText unit)
    {
        text.Open("TYPE");
        text.Comment($"the steps of {unit.Unit.Name}");
        text.Open($"{unit.StepTypeName} :");
        List(text, unit.Unit.Steps.Select(unit.StepValue).Prepend(unit.NoStep));
        text.Leave();
        text.Close("END_TYPE");
    }

    public static void Variables(TextLines text, UnitText unit)
    {
        Section(text, unit, VariableSection.Input, "VAR_INPUT");
        Section(text, unit, VariableSection.Seen, "VAR_INPUT");
        Section(text, unit, VariableSection.Output, "VAR_OUTPUT");
        Section(text, unit, VariableSection.Shown, "VAR_OUTPUT");
        if (unit.Dialect.States == StateForm.Integer)
        {
            Constants(text, unit);
        }

        Section(text, unit, VariableSection.Retained, "VAR RETAIN");
        Section(text, unit, VariableSection.Kept, "VAR");
        Section(text, unit, VariableSection.Temporary, "VAR_TEMP");
    }

    /// <summary>States and steps by their numbers; each block has its own, so that it can be read by itself.</summary>
    private static void Constants(TextLines text, UnitText unit)
    {
        (string Name, int Value)[] states = [.. Enum.GetValues<ProceduralState>().Select(state => (StateText.Value(state), (int)state))];
        (string Name, int Value)[] steps = [(unit.NoStep, 0), .. unit.Unit.Steps.Select(step => (unit.StepValue(step), unit.StepNumber(step)))];
        int widest = states.Concat(steps).Max(constant => constant.Name.Length);
        text.Open("VAR CONSTANT");
        text.Comment("the procedural states of IEC 61512-1; Pausing, Paused and Resuming are not used");
        Each(states);
        text.Comment($"the steps of {unit.Unit.Name}");
        Each(steps);
        text.Close("END_VAR");
        text.Blank();

        void Each((string Name, int Value)[] constants) =>
            Array.ForEach(constants, constant => text.Add(FormattableString.Invariant($"{constant.Name.PadRight(widest)} : INT := {constant.Value};")));
    }

    private static void Section(TextLines text, UnitText unit, VariableSection section, string words)
    {
        Declaration[] declarations = [.. unit.Declarations.Where(declaration => declaration.Section == section)];
        if (declarations.Length == 0)
        {
            return;
        }

        int widest = declarations.Max(declaration => declaration.Name.Length);
        text.Open(words);
        foreach (Declaration declaration in declarations)
        {
            string initial = declaration.Initial is null ? "" : $" := {declaration.Initial}";
            string comment = declaration.Comment.Length == 0 ? "" : $"  (* {TextLines.Harmless(declaration.Comment)} *)";
            text.Add($"{declaration.Name.PadRight(widest)} : {declaration.Type}{initial};{comment}");
        }

        text.Close("END_VAR");
        text.Blank();
    }

    private static void List(TextLines text, IEnumerable<string> values)
    {
        string[] all = [.. values];
        for (int index = 0; index < all.Length; index++)
        {
            string start = index == 0 ? "(" : " ";
            string end = index == all.Length - 1 ? ");" : ",";
            text.Add(start + all[index] + end);
        }
    }
}
