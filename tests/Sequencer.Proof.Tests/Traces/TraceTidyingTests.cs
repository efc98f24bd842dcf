using System.Collections.Immutable;
using Sequencer.Control.Traces;
using Sequencer.Control.TransitionSystems;
using Sequencer.Proof.Traces;
using Sequencer.Testing;

namespace Sequencer.Proof.Tests.Traces;

public sealed class TraceTidyingTests
{
    private static readonly InputRest Switch = new(0, false);
    private static readonly InputRest Button = new(0, true);

    /// <summary>A pump that a button starts, a contact that lets it run, a level that nothing reads.</summary>
    private static TransitionSystem Pump(long scansToRun)
    {
        Sketch sketch = new();
        Expression start = sketch.Input("start");
        Expression contact = sketch.Input("contact");
        sketch.Input("level", 0, 100);
        Expression runs = sketch.State("runs");
        Expression clock = sketch.State("clock", 0, 1000, 0);
        sketch.Next(runs, sketch.And(contact, sketch.Or(runs, start)));
        sketch.Clock(clock, runs);
        sketch.Require("H1", sketch.Not(sketch.AtLeast(clock, scansToRun)));
        return sketch.ToSystem();
    }

    [Fact]
    public void Inputs_that_do_not_matter_are_at_rest_and_buttons_are_let_go()
    {
        TransitionSystem system = Pump(3);
        Trace messy = new([Segment(1, 1, 1, 17), Segment(2, 1, 1, 90), Segment(1, 0, 1, 3), Segment(9, 1, 1, 4)]);
        Trace tidy = Tidy(system, messy, Switch, new InputRest(50, false));
        Assert.Equal(5, tidy.Scans);
        Assert.Equal([(1L, 1L, 50L, 1), (0L, 1L, 50L, 4)], tidy.Segments.Select(segment => (segment.Inputs[0], segment.Inputs[1], segment.Inputs[2], segment.Scans)));
    }

    [Fact]
    public void What_happens_before_the_run_needs_it_is_left_out()
    {
        TransitionSystem system = Pump(300);
        Trace messy = new([Segment(40, 0, 1, 17), Segment(100, 1, 1, 17), Segment(5, 0, 0, 17), Segment(500, 1, 1, 17)]);
        Trace tidy = Tidy(system, messy, Switch, new InputRest(0, false));
        Assert.Equal(302, tidy.Scans);
        Assert.Equal([1, 301], tidy.Segments.Select(segment => segment.Scans));
    }

    [Fact]
    public void Rest_may_be_another_value_than_nothing()
    {
        TransitionSystem system = Pump(3);
        Trace tidy = Tidy(system, new Trace([Segment(9, 1, 1, 0)]), new InputRest(1, false), new InputRest(50, false));
        Assert.All(tidy.Segments, segment => Assert.Equal((1L, 50L), (segment.Inputs[1], segment.Inputs[2])));
    }

    [Fact]
    public void An_assumption_holds_back_what_only_it_needs()
    {
        Sketch sketch = new();
        Expression pump = sketch.Input("pump");
        Expression healthy = sketch.Input("healthy");
        sketch.Assume("A1", healthy);
        sketch.Require("H1", sketch.Not(pump));
        TransitionSystem system = sketch.ToSystem();
        Trace tidy = TraceTidying.Tidy(system, system.Requirements[0], new Trace([new TraceSegment([0, 1], 4), new TraceSegment([1, 1], 1)]), [Switch, Switch], CancellationToken.None);
        Assert.Equal((1L, 1L, 1), (Assert.Single(tidy.Segments).Inputs[0], tidy.Segments[0].Inputs[1], tidy.Segments[0].Scans));
    }

    [Fact]
    public void A_run_that_does_not_end_as_it_should_stays_as_it_is()
    {
        TransitionSystem system = Pump(3);
        Trace other = new([Segment(4, 0, 1, 7)]);
        Assert.Same(other, Tidy(system, other, Switch, Switch));
    }

    private static Trace Tidy(TransitionSystem system, Trace trace, InputRest contact, InputRest level) =>
        TraceTidying.Tidy(system, system.Requirements[0], trace, ImmutableArray.Create(Button, contact, level), CancellationToken.None);

    private static TraceSegment Segment(int scans, long start, long contact, long level) => new([start, contact, level], scans);
}
