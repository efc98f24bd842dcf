using Sequencer.Control.Execution;
using Sequencer.Control.Traces;
using Sequencer.Control.TransitionSystems;
using Sequencer.Testing;

namespace Sequencer.Control.Tests.Traces;

public sealed class TracePlaybackTests
{
    private readonly ExpressionBuilder _builder = new();
    private readonly TransitionSystem _counter;
    private readonly Expression _below;

    public TracePlaybackTests()
    {
        Variable run = new("run", VariableRole.Input, 0, Sort.Boolean, IntegerRange.Boolean);
        Variable clock = new("clock", VariableRole.State, 0, Sort.Integer, new IntegerRange(0, 1_000_000));
        Expression counted = _builder.Minimum(_builder.Constant(1_000_000), _builder.Add(_builder.Variable(clock), _builder.Constant(1)));
        Expression next = _builder.IfThenElse(_builder.Variable(run), counted, _builder.Constant(0L));
        _below = _builder.Less(_builder.Variable(clock), _builder.Constant(100_000));
        _counter = TransitionSystem.Create(
            "counter",
            100,
            [run],
            [new StateVariable(clock, 0, next, false, StatePurpose.Control, RandomSystem.Origin)],
            [new OutputVariable("P101", _builder.Variable(run), RandomSystem.Origin)],
            [],
            [],
            [],
            []);
    }

    [Fact]
    public void A_long_run_of_equal_inputs_is_one_segment()
    {
        TraceRecorder recorder = new();
        for (int scan = 0; scan < 100_000; scan++)
        {
            recorder.Add([1]);
        }

        recorder.Add([0]);
        recorder.Add([1]);
        Trace trace = recorder.ToTrace();
        Assert.Equal([100_000, 1, 1], trace.Segments.Select(segment => segment.Scans));
        Assert.Equal(100_002, trace.Scans);
    }

    [Fact]
    public void Recording_goes_on_after_a_trace_was_taken()
    {
        TraceRecorder recorder = new();
        Assert.Equal(0, recorder.ToTrace().Scans);
        recorder.Add([1]);
        Assert.Equal(1, recorder.ToTrace().Scans);
        recorder.Add([1]);
        recorder.Add([0]);
        Assert.Equal([2, 1], recorder.ToTrace().Segments.Select(segment => segment.Scans));
    }

    [Fact]
    public void The_recorder_keeps_a_copy_of_the_inputs()
    {
        long[] inputs = [1];
        TraceRecorder recorder = new();
        recorder.Add(inputs);
        inputs[0] = 0;
        recorder.Add(inputs);
        Assert.Equal([1L, 0L], recorder.ToTrace().Segments.Select(segment => segment.Inputs[0]));
    }

    [Fact]
    public void The_first_scan_where_an_expression_is_false_is_found_past_100_000_scans()
    {
        Trace trace = new([new TraceSegment([0], 7), new TraceSegment([1], 100_001)]);
        Assert.Equal(7 + 100_000, TracePlayback.FirstScanWhereFalse(trace, _counter, _below));
        Assert.Equal(7 + 100_000, TracePlayback.FirstScanWhereFalse(trace, new CompiledStepper(_counter, [_below]), 0));
    }

    [Fact]
    public void An_expression_that_holds_in_every_scan_has_no_such_scan()
    {
        Trace trace = new([new TraceSegment([1], 100_000)]);
        Assert.Null(TracePlayback.FirstScanWhereFalse(trace, _counter, _below));
    }

    [Fact]
    public void Only_scans_in_which_something_changes_are_reported_as_changes()
    {
        Trace trace = new([new TraceSegment([0], 5), new TraceSegment([1], 10), new TraceSegment([0], 3)]);
        Assert.Equal([0L, 5L, 15L], TracePlayback.Changes(trace, new Interpreter(_counter)).Select(change => change.Scan));
    }

    [Fact]
    public void A_report_that_answers_no_ends_the_playback()
    {
        Trace trace = new([new TraceSegment([1], 50)]);
        Assert.Equal(4, TracePlayback.Play(trace, new Interpreter(_counter), static (_, scan) => scan < 3));
    }

    [Fact]
    public void A_trace_of_another_system_is_refused()
    {
        Trace trace = new([new TraceSegment([1, 1], 1)]);
        Assert.Throws<ArgumentException>(() => TracePlayback.Play(trace, new Interpreter(_counter), static (_, _) => true));
    }

    [Fact]
    public void A_recorded_random_run_replays_to_the_same_states()
    {
        TransitionSystem system = RandomSystem.Create(42);
        Interpreter first = new(system);
        TraceRecorder recorder = new();
        Random random = new(1);
        for (int scan = 0; scan < 500; scan++)
        {
            RandomSystem.FillInputs(system, random, first.Inputs);
            recorder.Add(first.Inputs);
            first.Step();
        }

        Interpreter second = new(system);
        Assert.Equal(500, TracePlayback.Play(recorder.ToTrace(), second, static (_, _) => true));
        Assert.Equal(first.States, second.States);
    }
}
