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
        other, "state", SeenKind.State, "state", StateText.Type, StateText.Value(ProceduralState.Idle), true, $"{other}.state"));

    public string Fact(string fact, bool surely)
    {
        (string other, string name) = QualifiedName.Split(fact);
        return See(surely
            ? new SeenVariable(other, name, SeenKind.Fact, name, "BOOL", "FALSE", true, fact)
            : new SeenVariable(other, $"{name}.possibly", SeenKind.FactPossibly, name, "BOOL", "FALSE", true, $"{fact}.possibly"));
    }

    private string Signal(string qualified, string aspect, SeenKind kind, string type, string initial, bool retained, string suffix)
    {
        (string other, string tag) = QualifiedName.Split(qualified);
        return See(new SeenVariable(other, tag + aspect, kind, tag, type, initial, retained, $"{tag}.{suffix}"));
    }

    private string See(SeenVariable variable)
    {
        _seen.TryAdd(variable.Path, variable);
        return unit.Declare(VariableSection.Seen, variable.Path, variable.Type, null, $"{variable.Path} as {variable.Unit} showed it last scan");
    }

    private static string Number(long value) => value.ToString(CultureInfo.InvariantCulture);
}
