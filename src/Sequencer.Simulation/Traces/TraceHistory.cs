using System.Collections.Immutable;
using Sequencer.Control.Execution;
using Sequencer.Control.Traces;
using Sequencer.Control.TransitionSystems;
using Sequencer.Simulation.Loop;

namespace Sequencer.Simulation.Traces;

/// <summary>A run replayed once, with every value at hand for every scan, numbered from 1.</summary>
internal sealed class TraceHistory
{
    private readonly ValueRuns[] _inputs;
    private readonly ValueRuns[] _states;
    private readonly ValueRuns[] _outputs;
    private readonly ValueRuns[] _alarms;
    private readonly Dictionary<string, ValueRuns> _definitions = new(StringComparer.Ordinal);

    /// <param name="system">What ran.</param>
    /// <param name="trace">Its inputs.</param>
    /// <param name="definitions">The named facts to be kept.</param>
    public TraceHistory(TransitionSystem system, Trace trace, IEnumerable<Definition> definitions)
    {
        System = system;
        Definition[] kept = [.. definitions.DistinctBy(definition => definition.Name)];
        _inputs = [.. system.Inputs.Select(_ => new ValueRuns(counts: false))];
        _states = [.. system.States.Select(state => new ValueRuns(IsClock(state)))];
        _outputs = [.. system.Outputs.Select(_ => new ValueRuns(counts: false))];
        _alarms = [.. system.Alarms.Select(_ => new ValueRuns(counts: false))];
        ValueRuns[] facts = [.. kept.Select(definition => _definitions[definition.Name] = new ValueRuns(counts: false))];
        Interpreter interpreter = new(system, [.. system.Alarms.Select(alarm => alarm.Raised), .. kept.Select(definition => definition.Value)]);
        Keep(_states, interpreter.States, 1);
        Scans = TracePlayback.Play(trace, interpreter, (stepper, scan) =>
        {
            Keep(_inputs, stepper.Inputs, scan + 1);
            Keep(_outputs, stepper.Outputs, scan + 1);
            Keep(_alarms, stepper.Observed.AsSpan(0, _alarms.Length), scan + 1);
            Keep(facts, stepper.Observed.AsSpan(_alarms.Length), scan + 1);
            Keep(_states, stepper.States, scan + 2);
            return true;
        });
    }

    public TransitionSystem System { get; }

    public long Scans { get; }

    public ValueRuns Input(int input) => _inputs[input];

    /// <summary>Before the scan; after the last scan it is the one after it.</summary>
    public ValueRuns State(int state) => _states[state];

    public ValueRuns Output(int output) => _outputs[output];

    public ValueRuns Alarm(int alarm) => _alarms[alarm];

    public ValueRuns? Definition(string name) => _definitions.GetValueOrDefault(name);

    /// <summary>A number that may count; the state of a unit does not.</summary>
    private static bool IsClock(StateVariable state) =>
        state.Variable.Sort == Sort.Integer && !state.Variable.Name.EndsWith(UnitPlaces.StateSuffix, StringComparison.Ordinal);

    private static void Keep(ValueRuns[] runs, ReadOnlySpan<long> values, long scan)
    {
        for (int index = 0; index < runs.Length; index++)
        {
            runs[index].Add(scan, values[index]);
        }
    }
}
