using Sequencer.Language.Programs;

namespace Sequencer.Export.Writing;

/// <summary>
/// The list of inputs and outputs: declared once with its address in the configuration (VAR_GLOBAL), and named once more where
/// the program uses it (VAR_EXTERNAL), as IEC 61131-3 asks.
/// </summary>
internal static class GlobalText
{
    public static string Name(AnalogueInput input) => $"AI_{input.Tag}";

    public static string Name(SwitchInput input) => $"DI_{input.Tag}";

    public static string Name(AnalogueOutput output) => $"AO_{output.Tag}";

    public static string Name(Output output) => $"DO_{output.Tag}";

    /// <param name="text">Takes the lines.</param>
    /// <param name="units">All units of the site.</param>
    /// <param name="together">In one section in place of one for each unit.</param>
    public static void Globals(TextLines text, IReadOnlyList<UnitText> units, bool together)
    {
        text.Comment("Inputs and outputs. AI, AO: loop currents in microamperes, 4000 to 20000; an AO without power gives none. DI, DO:");
        text.Comment("contacts and coils. Addresses count bytes: a word at %IW100 takes bytes 100 and 101, a bit at %IX10.0 is in byte 10.");
        Each(text, units, "VAR_GLOBAL", together, point => ($"{point.Name} AT {point.Address}", point.Words));
    }

    public static void Externals(TextLines text, IReadOnlyList<UnitText> units) =>
        Each(text, units, "VAR_EXTERNAL", together: false, point => (point.Name, ""));

    private static void Each(TextLines text, IReadOnlyList<UnitText> units, string section, bool together, Func<IoPoint, (string Name, string Words)> declared)
    {
        UnitText[] wired = [.. units.Where(unit => Points(unit.Unit).Any())];
        foreach (UnitText unit in wired)
        {
            (IoPoint Point, string Name, string Words)[] points = [.. Points(unit.Unit).Select(point => (point, declared(point).Name, declared(point).Words))];
            int widest = points.Max(point => point.Name.Length);
            text.Comment($"{unit.Unit.Name} {unit.Unit.Title}");
            if (!together || unit == wired[0])
            {
                text.Open(section);
            }

            foreach ((IoPoint point, string name, string words) in points)
            {
                text.Add($"{name.PadRight(widest)} : {point.Type};{(words.Length == 0 ? "" : $"  (* {TextLines.Harmless(words)} *)")}");
            }

            if (!together || unit == wired[^1])
            {
                text.Close("END_VAR");
            }
        }
    }

    /// <summary>The names of a unit's inputs and outputs in the configuration.</summary>
    public static IEnumerable<string> Names(UnitProgram unit) => Points(unit).Select(point => point.Name);

    private static IEnumerable<IoPoint> Points(UnitProgram unit) =>
    [
        .. unit.AnalogueInputs.Select(input => new IoPoint(Name(input), "INT", input.Address, $"{input.Description}: {ScalingText.Range(input)}")),
        .. unit.SwitchInputs.Select(input => new IoPoint(Name(input), "BOOL", input.Address, $"{input.Description}: contact {(input.NormallyClosed ? "open" : "closed")} when so")),
        .. unit.AnalogueOutputs.Select(output => new IoPoint(Name(output), "INT", output.Address, $"{output.Description}: {ScalingText.Range(output)}")),
        .. unit.Outputs.Select(output => new IoPoint(Name(output), "BOOL", output.Address, $"{output.Description}: de-energised is {Position(output)}")),
    ];

    /// <summary>Of a three-way valve the words before tell which way is open.</summary>
    private static string Position(Output output) => (output.Kind, output.DeEnergised) switch
    {
        (OutputKind.Valve, true) => "open",
        (OutputKind.Valve, false) => "closed",
        (_, true) => "running",
        _ => "stopped",
    };

    private sealed record IoPoint(string Name, string Type, DirectAddress Address, string Words);
}
