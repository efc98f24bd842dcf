using System.Collections.Immutable;
using Sequencer.Control.Signals;
using Sequencer.Control.TransitionSystems;
using Sequencer.Plant;
using Sequencer.Simulation.Metadata;
using Sequencer.Text;

namespace Sequencer.Simulation.Loop;

/// <summary>
/// Which terminal of the program meets which of the plant, by tag. An input that no plant terminal
/// belongs to is the operator's: commands, settings, manual demands, the return of power.
/// </summary>
internal sealed record Wiring(
    ImmutableArray<AnalogueBinding> Analogues,
    ImmutableArray<RealBinding> Reals,
    ImmutableArray<Wire> Contacts,
    ImmutableArray<Wire> Outputs,
    ImmutableArray<SetpointWire> Setpoints,
    ImmutableArray<bool> OperatorOwned)
{
    private const string FaultSuffix = ".fault";
    private const string ContactSuffix = ".contact";

    public static Wiring Join(TransitionSystem system, IPlant plant, SiteMetadata site, SourceSpan place, DiagnosticBag diagnostics)
    {
        Dictionary<string, int> inputs = system.Inputs.ToDictionary(input => input.Name, input => input.Index, StringComparer.Ordinal);
        bool[] operatorOwned = new bool[system.Inputs.Length];
        Array.Fill(operatorOwned, true);
        HashSet<string> read = new(StringComparer.Ordinal);
        List<AnalogueBinding> analogues = [];
        List<Wire> contacts = [];
        foreach (Variable input in system.Inputs)
        {
            if (input.Name.EndsWith(ContactSuffix, StringComparison.Ordinal))
            {
                operatorOwned[input.Index] = false;
                string tag = input.Name[..^ContactSuffix.Length];
                read.Add(tag);
                int found = plant.Contacts.IndexOf(tag);
                if (found < 0)
                {
                    diagnostics.Add(BindingDiagnostics.InputNotMeasured(place, tag, "contact"));
                    continue;
                }

                contacts.Add(new Wire(found, input.Index));
            }
            else if (inputs.TryGetValue(input.Name + FaultSuffix, out int fault) || site.Signal(input.Name)?.Kind == SignalKind.Analogue)
            {
                bool hasFault = inputs.ContainsKey(input.Name + FaultSuffix);
                operatorOwned[input.Index] = false;
                operatorOwned[hasFault ? fault : input.Index] = false;
                read.Add(input.Name);
                int found = Transmitter(plant, input.Name);
                if (found < 0)
                {
                    diagnostics.Add(BindingDiagnostics.InputNotMeasured(place, input.Name, "transmitter"));
                    continue;
                }

                CompareRanges(input, plant.Transmitters[found], site, place, diagnostics);

                analogues.Add(new AnalogueBinding(found, input.Index, hasFault ? fault : -1, new AnalogueScaling(input.Range)));
            }
        }

        List<RealBinding> reals = [];
        foreach (RealMetadata real in site.Reals)
        {
            int transmitter = Transmitter(plant, real.Transmitter);
            if (inputs.TryGetValue(real.Input, out int input) && transmitter >= 0)
            {
                operatorOwned[input] = false;
                reals.Add(new RealBinding(transmitter, input, new IntegerRange(real.Low, real.High), system.Inputs[input].Range));
            }
        }

        foreach (string tag in plant.Transmitters.Select(port => port.Tag).Concat(plant.Contacts).Where(tag => !read.Contains(tag)))
        {
            diagnostics.Add(BindingDiagnostics.InstrumentNotRead(place, tag));
        }

        return new Wiring([.. analogues], [.. reals], [.. contacts], JoinOutputs(system, plant, diagnostics), JoinSetpoints(system, plant, site, diagnostics), [.. operatorOwned]);
    }

    private static int Transmitter(IPlant plant, string tag)
    {
        for (int index = 0; index < plant.Transmitters.Length; index++)
        {
            if (plant.Transmitters[index].Tag == tag)
            {
                return index;
            }
        }

        return -1;
    }

    /// <summary>4 and 20 mA must mean the same to the transmitter and to the program.</summary>
    private static void CompareRanges(Variable input, TransmitterPort port, SiteMetadata site, SourceSpan place, DiagnosticBag diagnostics)
    {
        if (site.Signal(input.Name) is not SignalMetadata signal)
        {
            return;
        }

        decimal low = input.Range.Minimum * signal.Resolution;
        decimal high = input.Range.Maximum * signal.Resolution;
        if (!Same(low, port.Low) || !Same(high, port.High))
        {
            string program = string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{low} .. {high} {signal.Unit}");
            string plant = string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{port.Low} .. {port.High} {port.Unit}");
            diagnostics.Add(BindingDiagnostics.RangesDiffer(place, input.Name, program, plant));
        }

        bool Same(decimal ours, double theirs) =>
            (signal.Unit == port.Unit ? ours : site.Convert(ours, signal.Unit, port.Unit)) is decimal converted
            && Math.Abs((double)converted - theirs) <= RangeTolerance * Math.Max(1, Math.Abs(theirs));
    }

    /// <summary>Rounding between decimals and doubles, far below any instrument's accuracy.</summary>
    private const double RangeTolerance = 1e-9;

    private static ImmutableArray<Wire> JoinOutputs(TransitionSystem system, IPlant plant, DiagnosticBag diagnostics)
    {
        List<Wire> outputs = [];
        for (int index = 0; index < system.Outputs.Length; index++)
        {
            OutputVariable output = system.Outputs[index];
            if (output.Value.Sort != Sort.Boolean)
            {
                continue;
            }

            int found = plant.Actuators.IndexOf(output.Name);
            if (found < 0)
            {
                diagnostics.Add(BindingDiagnostics.OutputDrivesNothing(output.Origin.Span, output.Name));
                continue;
            }

            outputs.Add(new Wire(found, index));
        }

        return [.. outputs];
    }

    private static ImmutableArray<SetpointWire> JoinSetpoints(TransitionSystem system, IPlant plant, SiteMetadata site, DiagnosticBag diagnostics)
    {
        List<SetpointWire> setpoints = [];
        for (int index = 0; index < system.Outputs.Length; index++)
        {
            OutputVariable output = system.Outputs[index];
            if (output.Value.Sort != Sort.Integer)
            {
                continue;
            }

            int found = plant.Setpoints.IndexOf(output.Name);
            if (found < 0 || site.Signal(output.Name) is not { Range: { } range })
            {
                diagnostics.Add(BindingDiagnostics.OutputDrivesNothing(output.Origin.Span, output.Name));
                continue;
            }

            setpoints.Add(new SetpointWire(found, index, range.Low, range.High));
        }

        return [.. setpoints];
    }
}
