using System.Collections.Immutable;
using Sequencer.Control.TransitionSystems;
using Sequencer.Simulation.Loop;

namespace Sequencer.Simulation.Traces;

/// <summary>The moments of a run, each with what happens in it.</summary>
internal sealed class TraceMoments
{
    /// <summary>A pause shorter than this needs no reason.</summary>
    private const long ShortestWaitMilliseconds = 1000;

    /// <summary>Scans until a clock is seen to count that a moment started.</summary>
    private const long SoonAfter = 4;

    private readonly TraceStory _story;
    private readonly TraceHistory _history;
    private readonly TraceNames _names;
    private readonly SortedDictionary<long, List<TraceHappening>> _found = [];

    private TraceMoments(TraceStory story)
    {
        _story = story;
        _history = story.History;
        _names = new TraceNames(story.Site);
    }

    public static ImmutableArray<TraceMoment> Of(TraceStory story)
    {
        TraceMoments moments = new(story);
        moments.Inputs();
        moments.Units();
        moments.Latches();
        moments.Outputs();
        moments.At(story.Scans);
        long before = 1;
        ImmutableArray<TraceMoment>.Builder told = ImmutableArray.CreateBuilder<TraceMoment>();
        foreach ((long scan, List<TraceHappening> happenings) in moments._found)
        {
            told.Add(new TraceMoment(scan, moments.Waited(before, scan), [.. happenings.OrderBy(happening => happening.Kind)]));
            before = scan;
        }

        return told.ToImmutable();
    }

    private List<TraceHappening> At(long scan)
    {
        if (!_found.TryGetValue(scan, out List<TraceHappening>? happenings))
        {
            _found.Add(scan, happenings = []);
        }

        return happenings;
    }

    private void Inputs()
    {
        foreach (TraceInput input in _story.Inputs.OrderBy(input => input.Kind != TraceInputKind.Failure))
        {
            long before = input.Rest;
            foreach (ValueRun run in _history.Input(input.Variable.Index).Runs)
            {
                bool letGo = input.IsMomentary && run.Value == input.Rest;
                if (run.Value != before && !letGo && !IsToldWithManual(input, run.From))
                {
                    At(run.From).Add(_names.Input(input, run.Value, _story.HasFailed(input.Tag, run.From), name => InputNow(name, run.From)));
                }

                before = run.Value;
            }
        }
    }

    /// <summary>What is demanded in manual is told where the output is taken into manual; in automatic it is nothing.</summary>
    private bool IsToldWithManual(TraceInput input, long scan)
    {
        const string Demand = ".demand";
        if (input.Kind != TraceInputKind.Manual || !input.Name.EndsWith(Demand, StringComparison.Ordinal))
        {
            return false;
        }

        string manual = input.Name[..^Demand.Length];
        return InputNow(manual, scan) != 1 || scan == 1 || InputNow(manual, scan - 1) != 1;
    }

    private long? InputNow(string name, long scan) =>
        _story.Inputs.FirstOrDefault(input => input.Name == name) is { } found ? _history.Input(found.Variable.Index).At(scan) : null;

    private void Units()
    {
        foreach (UnitPlaces unit in _story.Units)
        {
            foreach (ValueRun run in _history.State(unit.StatePlace).Runs.Where(run => run.From > 1 && run.From - 1 <= _story.Scans))
            {
                At(run.From - 1).Add(Program($"{unit.Name} is {(UnitState)run.Value}{Alarm(unit.Name, run.From - 1)}"));
            }

            foreach (IGrouping<long, (string Step, bool Enters)> change in unit.Steps
                .SelectMany(step => _history.State(step.Place).Runs.Skip(1).Select(run => (run.From, Step: step.Step, Enters: run.Value == 1)))
                .GroupBy(change => change.From - 1, change => (change.Step, change.Enters)))
            {
                string[] left = [.. change.Where(step => !step.Enters).Select(step => step.Step)];
                string[] entered = [.. change.Where(step => step.Enters).Select(step => _names.Step(unit.Name, step.Step))];
                string words = (left.Length, entered.Length) switch
                {
                    (0, _) => $"{unit.Name} enters {string.Join(" and ", entered)}",
                    (_, 0) => $"{unit.Name} leaves step {string.Join(" and ", left)}",
                    _ => $"{unit.Name} goes from step {string.Join(" and ", left)} to {string.Join(" and ", entered)}",
                };
                At(change.Key).Add(Program(words));
            }
        }
    }

    /// <summary>The alarm that was raised as the unit changed its state: most often the reason.</summary>
    private string Alarm(string unit, long scan)
    {
        IEnumerable<Alarm> raised = _history.System.Alarms.Where((_, index) =>
            _history.Alarm(index).RunAt(scan) is { Value: 1 } run && run.From == scan);
        Alarm? own = raised.FirstOrDefault(alarm => alarm.Name.StartsWith(unit + ".", StringComparison.Ordinal) || !alarm.Name.Contains(".step", StringComparison.Ordinal));
        return own is null ? "" : $", with the alarm \"{own.Message}\"";
    }

    private void Latches()
    {
        foreach (StateVariable state in _history.System.States.Where(state => state.Purpose == StatePurpose.Control && state.Variable.Sort == Sort.Boolean))
        {
            if (Words(state) is not { } words || !_story.Facts.HasState(state.Variable.Index))
            {
                continue;
            }

            foreach (ValueRun run in _history.State(state.Variable.Index).Runs.Skip(1))
            {
                At(run.From - 1).Add(Program(run.Value == 1 ? words.On : words.Off));
            }
        }
    }

    /// <summary>What is told of a state: of declared latches, trips, interlocks that stay, and devices that disagree; null for aids.</summary>
    internal static (string On, string Off)? Words(StateVariable state)
    {
        string name = state.Variable.Name;
        int dot = name.LastIndexOf('.');
        string last = name[(dot + 1)..];
        string title = TraceNames.TitleOf(state.Origin);
        return last switch
        {
            "latched" => ($"{name[..dot]}{title} latches", $"{name[..dot]}{title} lets go"),
            "discrepancy" => ($"{name[..dot]} does not do what it is told for longer than its time", $"{name[..dot]} does what it is told again"),
            _ when char.IsAsciiLetterUpper(last[0]) => ($"{name}{title} is set", $"{name}{title} is cleared"),
            _ => null,
        };
    }

    private void Outputs()
    {
        foreach (OutputVariable output in _story.Outputs)
        {
            long before = 0;
            int place = _history.System.Outputs.IndexOf(output);
            foreach (ValueRun run in _history.Output(place).Runs)
            {
                if (run.Value != before)
                {
                    string words = output.Value.Sort == Sort.Boolean
                        ? $"{_names.Titled(output.Name)} goes {(run.Value == 1 ? "on" : "off")}"
                        : $"{_names.Titled(output.Name)} is set to {_names.Value(output.Name, Sort.Integer, run.Value)}";
                    At(run.From).Add(new TraceHappening(TraceHappeningKind.Output, words));
                }

                before = run.Value;
            }
        }
    }

    /// <summary>The way that opened, or the clock that ran out, at the end of a pause.</summary>
    private string? Waited(long from, long to)
    {
        long milliseconds = (to - from) * _story.ScanMilliseconds;
        if (milliseconds < ShortestWaitMilliseconds)
        {
            return null;
        }

        string passes = $"{TraceTimes.Span(milliseconds)} {(milliseconds == 1000 ? "passes" : "pass")}";
        Definition? way = _history.System.Definitions.FirstOrDefault(definition =>
            TraceParts.IsWay(definition) && _history.Definition(definition.Name)?.RunAt(to) is { Value: 1 } run && run.From == to);
        StateVariable? clock = _history.System.States.FirstOrDefault(state =>
            _story.Facts.HasState(state.Variable.Index) && RanOut(_history.State(state.Variable.Index), to, from));
        return way is not null ? $"{passes}, waiting for: {TraceParts.TextOf(way.Origin)}"
            : clock is not null ? $"{passes}, for the time of: {TraceParts.TextOf(clock.Origin)}"
            : passes;
    }

    /// <summary>Counted through the pause and stopped with its end.</summary>
    private static bool RanOut(ValueRuns runs, long to, long from) =>
        runs.RunAt(Math.Max(1, to - 1)) is { Change: > 0 } run && run.From <= from + SoonAfter && (runs.RunAt(to) != run || runs.RunAt(to + 1) != run);

    private static TraceHappening Program(string words) => new(TraceHappeningKind.Program, words);
}
