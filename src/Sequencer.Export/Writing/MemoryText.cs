namespace Sequencer.Export.Writing;

/// <summary>The procedural state and the active steps are kept twice: what differs was changed from outside the program.</summary>
internal static class MemoryText
{
    private const string Message = "State or steps are not as the program wrote them";

    public static string Differs(UnitText unit) => unit.Scratch("memory.differs");

    public static string Latched(UnitText unit) => unit.Flag(VariableSection.Retained, "memory.latched", $"{Message}; until reset");

    /// <summary>The second of the two variables that say whether the step is active.</summary>
    public static string CopyOf(UnitText unit, int step) => unit.Names.Of(Path(unit.Place(step).Branch));

    /// <summary>Before anything else is judged by the state or the steps.</summary>
    public static void Judge(UnitText unit)
    {
        TextLines body = unit.Body;
        body.Comment("Memory: state and steps are kept twice. If the two differ, something other than this program wrote there: the unit");
        body.Comment("aborts, and every output has its emergency value until a reset. Totals, latches, trips and settings are kept once.");
        body.Add($"{Differs(unit)} := {UnitText.Bracketed(Pairs(unit).Select(pair => $"({pair.Kept} <> {pair.Copy})"), "OR", "FALSE")};");
        FaultText.SetOrReset(unit, Latched(unit), Differs(unit), Differs(unit), null);
    }

    /// <summary>Last of all in the scan.</summary>
    public static void Finish(UnitText unit)
    {
        unit.Body.Comment("State and steps are kept twice.");
        foreach ((string kept, string copy) in Pairs(unit))
        {
            unit.Body.Add($"{copy} := {kept};");
        }
    }

    public static void Alarms(UnitText unit, Action<string, string, string> raise) => raise("memory", Message, Latched(unit));

    private static string Path(string branch) => $"{branch}.copy";

    private static IEnumerable<(string Kept, string Copy)> Pairs(UnitText unit)
    {
        string state = StateMachineText.Kept(unit);
        yield return (state, unit.Declare(
            VariableSection.Retained, "state.copy", StateText.Type(unit.Dialect), StateText.First(unit.Dialect), $"the same as {state}"));
        for (int region = 0; region < unit.Regions.Count; region++)
        {
            string branch = StepText.Kept(unit, region);
            yield return (branch, unit.Declare(
                UnitText.Memory(unit.Regions[region][0]), Path(branch), unit.StepType, unit.Dialect.Literal(unit.NoStep, 0), $"the same as {branch}"));
        }
    }
}
