using System.Collections.Immutable;
using Sequencer.Control.TransitionSystems;
using Sequencer.Simulation.Loop;
using Sequencer.Simulation.Metadata;

namespace Sequencer.Simulation.Records;

/// <summary>
/// What a record shows, in this order: states and steps of each unit, measurements, totals, contacts
/// and channel faults, outputs, plant quantities.
/// </summary>
internal sealed class RecordColumns
{
    private readonly ClosedLoop _loop;
    private readonly UnitTracker[] _units;
    private readonly OutputTracker[] _outputs;
    private readonly ImmutableArray<ValueSource> _numbers;
    private readonly ImmutableArray<ValueSource> _switches;
    private readonly ImmutableArray<ValueSource> _quantities;
    private readonly WatchedPlaces _switchValues;

    public RecordColumns(ClosedLoop loop, UnitTracker[] units, OutputTracker[] outputs)
    {
        _loop = loop;
        _units = units;
        _outputs = outputs;
        _numbers = [.. Named(loop, SignalKind.Analogue), .. Named(loop, SignalKind.Setpoint), .. Named(loop, SignalKind.Total), .. Named(loop, SignalKind.Count)];
        _switches = [.. Named(loop, SignalKind.Switch), .. Faults(loop)];
        _quantities = [.. loop.Plant.Quantities.Concat(loop.Plant.Totals).Select(quantity => loop.Find(quantity.Name)).OfType<ValueSource>().Where(IsPlants)];
        _switchValues = new WatchedPlaces(_switches);
    }

    public int Count => (2 * _units.Length) + _numbers.Length + _switches.Length + _outputs.Length + _quantities.Length;

    /// <summary>Whether a contact or channel fault differs from the scan before.</summary>
    public bool SwitchesChanged() => _switchValues.HaveChanged(_loop);

    public void Fill(Span<double> row)
    {
        int place = 0;
        foreach (UnitTracker unit in _units)
        {
            row[place++] = unit.State;
            row[place++] = unit.Label;
        }

        foreach (ValueSource number in _numbers)
        {
            row[place++] = _loop.Value(number);
        }

        for (int index = 0; index < _switches.Length; index++)
        {
            row[place++] = _switches[index].Resolution * _switchValues[index];
        }

        foreach (OutputTracker output in _outputs)
        {
            row[place++] = output.On ? 1 : 0;
        }

        foreach (ValueSource quantity in _quantities)
        {
            row[place++] = _loop.Value(quantity);
        }
    }

    public ImmutableArray<RunColumn> Describe()
    {
        ImmutableArray<RunColumn>.Builder columns = ImmutableArray.CreateBuilder<RunColumn>(Count);
        foreach (UnitTracker unit in _units)
        {
            string name = unit.Unit.Name;
            columns.Add(new RunColumn(name + ".state", ColumnKind.UnitState, "", 0, "State") { Labels = [.. Enum.GetNames<UnitState>()] });
            columns.Add(new RunColumn(name + ".steps", ColumnKind.ActiveSteps, "", 0, "Active steps") { Labels = [.. unit.Labels] });
        }

        foreach (ValueSource number in _numbers)
        {
            SignalMetadata? signal = _loop.Site.Signal(number.Name);
            ColumnKind kind = signal?.Kind == SignalKind.Total ? ColumnKind.Total : ColumnKind.Signal;
            columns.Add(new RunColumn(number.Name, kind, number.Unit, number.Decimals, signal?.Description ?? ""));
        }

        foreach (ValueSource contact in _switches)
        {
            columns.Add(new RunColumn(contact.Name, ColumnKind.Switch, "", 0, _loop.Site.Signal(contact.Name)?.Description ?? "Channel bad"));
        }

        foreach (OutputVariable output in _loop.System.Outputs.Where(output => output.Value.Sort == Sort.Boolean))
        {
            columns.Add(new RunColumn(output.Name, ColumnKind.Output, "", 0, _loop.Site.Signal(output.Name)?.Description ?? ""));
        }

        foreach (ValueSource quantity in _quantities)
        {
            columns.Add(new RunColumn(quantity.Name, ColumnKind.Quantity, quantity.Unit, quantity.Decimals, ""));
        }

        return columns.ToImmutable();
    }

    /// <summary>A program's fact of the same name has a column already.</summary>
    private static bool IsPlants(ValueSource source) => source.Origin is ValueOrigin.PlantQuantity or ValueOrigin.PlantTotal;

    private static IEnumerable<ValueSource> Named(ClosedLoop loop, SignalKind kind)
    {
        foreach (SignalMetadata signal in loop.Site.Signals.Where(signal => signal.Kind == kind))
        {
            if ((loop.Find(signal.Tag) ?? loop.Find(signal.Tag + ".contact")) is ValueSource source)
            {
                yield return source;
            }
        }
    }

    private static IEnumerable<ValueSource> Faults(ClosedLoop loop)
    {
        foreach (SignalMetadata signal in loop.Site.Signals.Where(signal => signal.Kind == SignalKind.Analogue))
        {
            if (loop.Find(signal.Tag + ".fault") is ValueSource source)
            {
                yield return source;
            }
        }
    }
}
