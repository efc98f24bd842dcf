using System.Collections.Immutable;
using Sequencer.Language.Programs;

namespace Sequencer.Export.Writing;

/// <summary>
/// The block that holds the blocks of all units of a site: it hands each what the others showed at the end of the last
/// scan, so that the order of the calls does not matter; and it keeps the queues for shared equipment.
/// </summary>
internal sealed class SiteBlockText
{
    public const string BlockName = "UNITS_TOGETHER";

    /// <summary>What stands for the units where one is named in the evidence.</summary>
    private const string AllUnits = "all-units";

    private readonly IReadOnlyList<UnitText> _units;
    private readonly ImmutableArray<SeenVariable> _seen;
    private readonly Names _names = new();
    private readonly ClaimQueueText _claims;

    private SiteBlockText(IReadOnlyList<UnitText> units, SiteProgram site)
    {
        _units = units;
        _claims = new ClaimQueueText(site, units, _names);
        _seen = [.. units.SelectMany(unit => unit.Seen.All).Where(variable => variable.Kind != SeenKind.Owner).DistinctBy(variable => variable.Path).OrderBy(variable => variable.Path, StringComparer.Ordinal)];
        foreach (UnitText unit in units)
        {
            _names.Of(unit.Unit.Name);
            ShownText.Write(unit, [.. _seen.Where(variable => variable.Unit == unit.Unit.Name)]);
        }
    }

    public static SiteBlockText Of(IReadOnlyList<UnitText> units, SiteProgram site) => new(units, site);

    public ExportedBlock Block => new(
        AllUnits,
        BlockName,
        [.. _units.SelectMany(unit => unit.Declarations.Where(IsNamed).Select(declaration => new ExportedVariable(Path(unit, declaration), TextName(unit, declaration)))),
            .. _seen.Select(variable => new ExportedVariable(variable.SystemName, Copy(variable))).Where(variable => IsOwnCopy(variable.Path)),
            .. _claims.Variables],
        [.. _units.SelectMany(unit => unit.Unit.Steps.Select(step =>
            new ExportedStep(unit.Unit.Name, step.Number, $"{unit.Unit.Name}.{unit.Place(step.Number).Branch}", $"{unit.Unit.Name}.{MemoryText.CopyOf(unit, step.Number)}", unit.StepNumber(step))))])
    {
        Copies = [.. _seen.Select(variable => new ExportedVariable(variable.SystemName, Copy(variable))).Where(variable => !IsOwnCopy(variable.Path))],
    };

    /// <summary>The site's name of a block's input or output.</summary>
    public string Terminal(UnitText unit, Declaration declaration) => _names.Of(Path(unit, declaration));

    public void Print(TextLines text)
    {
        text.Comment("All units of the site. What one unit sees of another is what that one showed at the end of the last scan:");
        text.Comment("the order of the calls does not matter.");
        text.Add($"FUNCTION_BLOCK {BlockName}");
        Section(text, "VAR_INPUT", Terminals(VariableSection.Input));
        Section(text, "VAR_OUTPUT", Terminals(VariableSection.Output));
        Section(text, "VAR RETAIN", [.. _seen.Where(variable => variable.Retained).Select(Declared), .. _claims.Retained]);
        Section(text, "VAR", [.. _seen.Where(variable => !variable.Retained).Select(Declared), .. _units.Select(unit => $"{unit.Unit.Name} : {unit.BlockName};")]);
        Section(text, "VAR_TEMP", _claims.Temporary);
        _claims.Owners(text);
        foreach (UnitText unit in _units)
        {
            Call(text, unit);
        }

        _claims.Advance(text);
        if (_seen.Length > 0)
        {
            text.Blank();
            text.Comment("What each unit shows to the others in the next scan.");
            foreach (SeenVariable variable in _seen)
            {
                UnitText owner = _units.First(unit => unit.Unit.Name == variable.Unit);
                text.Add($"{Copy(variable)} := {variable.Unit}.{ShownText.Name(owner, variable)};");
            }
        }

        text.Blank();
        text.Add("END_FUNCTION_BLOCK");
    }

    private void Call(TextLines text, UnitText unit)
    {
        Declaration[] inputs = [.. unit.Declarations.Where(declaration => declaration.Section is VariableSection.Input or VariableSection.Seen)];
        text.Blank();
        text.Open($"{unit.Unit.Name}(");
        for (int index = 0; index < inputs.Length; index++)
        {
            string source = inputs[index].Section == VariableSection.Input
                ? Terminal(unit, inputs[index])
                : Source(unit.Seen.All.First(variable => variable.Path == inputs[index].Path));
            text.Add($"{inputs[index].Name} := {source}{(index == inputs.Length - 1 ? ");" : ",")}");
        }

        text.Leave();
        foreach (Declaration output in unit.Declarations.Where(declaration => declaration.Section == VariableSection.Output))
        {
            text.Add($"{Terminal(unit, output)} := {unit.Unit.Name}.{output.Name};");
        }
    }

    private IEnumerable<string> Terminals(VariableSection section) =>
        from unit in _units
        from declaration in unit.Declarations
        where declaration.Section == section
        select $"{Terminal(unit, declaration)} : {declaration.Type}{(declaration.Initial is null ? "" : $" := {declaration.Initial}")};{Words(declaration.Comment)}";

    private string Declared(SeenVariable variable) =>
        $"{Copy(variable)} : {variable.Type} := {variable.Initial};{Words($"{variable.Path} at the end of the last scan")}";

    private string Source(SeenVariable variable) => variable.Kind == SeenKind.Owner ? _claims.Name(variable) : Copy(variable);

    private string Copy(SeenVariable variable) => _names.Of($"{variable.Path}.shown");

    private static string Words(string comment) => comment.Length == 0 ? "" : $"  (* {TextLines.Harmless(comment)} *)";

    private static void Section(TextLines text, string words, IEnumerable<string> lines)
    {
        string[] all = [.. lines];
        if (all.Length == 0)
        {
            return;
        }

        text.Open(words);
        Array.ForEach(all, text.Add);
        text.Close("END_VAR");
    }

    /// <summary>A variable of the text has the name of its instance before its own.</summary>
    private string TextName(UnitText unit, Declaration declaration) => declaration.Section is VariableSection.Input or VariableSection.Output
        ? Terminal(unit, declaration)
        : $"{unit.Unit.Name}.{declaration.Name}";

    private static bool IsNamed(Declaration declaration) =>
        declaration.Section is not (VariableSection.Temporary or VariableSection.Seen or VariableSection.Shown);

    /// <summary>What only the sight of others needs is kept in the program by a variable of its own, else beside the owner's.</summary>
    private static bool IsOwnCopy(string name) => name.EndsWith(".shown", StringComparison.Ordinal) || name.EndsWith(".shown_usable", StringComparison.Ordinal);

    /// <summary>The program's name: tags are the site's, all else is the unit's.</summary>
    public static string Path(UnitText unit, Declaration declaration)
    {
        const string alarm = "alarm.";
        string path = declaration.Path;
        bool isAlarm = path.StartsWith(alarm, StringComparison.Ordinal);
        string below = isAlarm ? path[alarm.Length..] : path;
        string first = below.Split('.')[0];
        string named = IsTag(unit.Unit, first) ? below : $"{unit.Unit.Name}.{below}";
        return isAlarm ? alarm + named : named;
    }

    private static bool IsTag(UnitProgram unit, string name) =>
        unit.Outputs.Any(output => output.Tag == name)
        || unit.AnalogueOutputs.Any(output => output.Tag == name)
        || unit.AnalogueInputs.Any(input => input.Tag == name)
        || unit.SwitchInputs.Any(input => input.Tag == name);
}
