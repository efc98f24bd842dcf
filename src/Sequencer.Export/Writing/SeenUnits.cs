using System.Globalization;
using Sequencer.Language.Programs;

namespace Sequencer.Export.Writing;

/// <summary>What a unit's conditions name of other units, as inputs of its block; the program around hands them in.</summary>
internal sealed class SeenUnits(UnitText unit, SiteProgram site)
{
    private readonly Dictionary<string, SeenVariable> _seen = new(StringComparer.Ordinal);

    public IReadOnlyCollection<SeenVariable> All => _seen.Values;

    public string Switch(SwitchInput input) => Signal(
        input.Tag, "", SeenKind.Switch, "BOOL", "FALSE", retained: true, "shown");

    public string Reading(AnalogueInput input) => Signal(
        input.Tag, "", SeenKind.Reading, UnitText.Range(input.Minimum, input.Maximum), Number(input.Minimum), retained: true, "shown");

    public string Usable(AnalogueInput input) => Signal(input.Tag, ".usable", SeenKind.Usable, "BOOL", "FALSE", retained: true, "shown_usable");

    public string Output(Output output) => Signal(
        output.Tag, "", SeenKind.Output, "BOOL", output.DeEnergised ? "TRUE" : "FALSE", retained: false, "last");

    public string Discrepancy(Output output) => Signal(output.Tag, ".discrepancy", SeenKind.Discrepancy, "BOOL", "FALSE", retained: true, "discrepancy");

    public string Total(Output output) => Signal(
        output.Tag, ".total", SeenKind.Total, UnitText.Range(0, QuantityMeasure.LargestTotal), "0", retained: true, "total");

    public string Latch(string latch)
    {
        (string other, string name) = QualifiedName.Split(latch);
        bool retained = site.Units.First(one => one.Name == other).Latches.First(one => one.Name == name).Retained;
        return See(new SeenVariable(other, name, SeenKind.Latch, name, "BOOL", "FALSE", retained, latch));
    }

    /// <summary>A request to start, and whether it has been taken.</summary>
    public string Request(string other, string path, bool retained) =>
        See(new SeenVariable(other, path, SeenKind.Request, path, "BOOL", "FALSE", retained, QualifiedName.Of(other, path)));

    public string Count(string count)
    {
        (string other, string name) = QualifiedName.Split(count);
        Count declared = site.Units.First(one => one.Name == other).Counts.First(one => one.Name == name);
        return See(new SeenVariable(
            other, name, SeenKind.Count, name, UnitText.Range(declared.Minimum, declared.Largest), Number(declared.Initial), true, count));
    }

    public string Trip(string trip)
    {
        (string other, string name) = QualifiedName.Split(trip);
        return See(new SeenVariable(other, name, SeenKind.Trip, name, "BOOL", "FALSE", true, $"{trip}.latched"));
    }

    public string Step(string other, int step)
    {
        string number = Number(step);
        return See(new SeenVariable(other, $"step{number}", SeenKind.Step, number, "BOOL", "FALSE", true, $"{other}.step{number}.active"));
    }

    public string State(string other) => See(new SeenVariable(
        other, "state", SeenKind.State, "state", StateText.Type(unit.Dialect), StateText.First(unit.Dialect), true, $"{other}.state"));

    public string Fact(string fact, bool surely)
    {
        (string other, string name) = QualifiedName.Split(fact);
        return See(surely
            ? new SeenVariable(other, name, SeenKind.Fact, name, "BOOL", "FALSE", true, fact)
            : new SeenVariable(other, $"{name}.possibly", SeenKind.FactPossibly, name, "BOOL", "FALSE", true, $"{fact}.possibly"));
    }

    /// <summary>The unit, or any where null, owned the shared equipment at the start of the scan.</summary>
    public string Owner(string equipment, string? owner)
    {
        if (owner is null)
        {
            return UnitText.Bracketed(site.ClaimantsOf(equipment).Select(claimant => Owner(equipment, claimant.Name)), "OR", "FALSE");
        }

        if (site.ClaimantsOf(equipment).All(claimant => claimant.Name != owner))
        {
            return "FALSE";
        }

        (string unitOfIt, string name) = QualifiedName.Split(equipment);
        string owned = ClaimQueueText.OwnedBy(name, owner);
        return See(new SeenVariable(unitOfIt, owned, SeenKind.Owner, owner, "BOOL", "FALSE", false, QualifiedName.Of(unitOfIt, owned)), $"{owner} owns {equipment}");
    }

    /// <summary>What steps of other units asked of a shared output in the last scan, where they own it.</summary>
    public IEnumerable<string> Asked(Output output, bool on)
    {
        string aspect = $"{output.Tag}.{(on ? "asks_on" : "asks_off")}";
        string scratch = $"{QualifiedName.Of(unit.Unit.Name, output.Tag)}.{(on ? "on" : "off")}";
        return site.DriversOf(unit.Unit, output).Select(driver =>
        {
            string other = driver.Unit.Name;
            string asked = See(new SeenVariable(other, aspect, SeenKind.Asked, scratch, "BOOL", "FALSE", false, $"{other}.{aspect}.shown"));
            return $"({asked} AND {Owner(driver.Equipment, other)})";
        });
    }

    private string Signal(string qualified, string aspect, SeenKind kind, string type, string initial, bool retained, string suffix)
    {
        (string other, string tag) = QualifiedName.Split(qualified);
        return See(new SeenVariable(other, tag + aspect, kind, tag, type, initial, retained, $"{tag}.{suffix}"));
    }

    private string See(SeenVariable variable, string? comment = null)
    {
        _seen.TryAdd(variable.Path, variable);
        return unit.Declare(VariableSection.Seen, variable.Path, variable.Type, null, comment ?? $"{variable.Path} as {variable.Unit} showed it last scan");
    }

    private static string Number(long value) => value.ToString(CultureInfo.InvariantCulture);
}
