using System.Collections.Immutable;
using Sequencer.Control.TransitionSystems;
using Sequencer.Simulation.Loop;
using Sequencer.Simulation.Traces;

namespace Sequencer.Simulation.Pictures;

/// <summary>The rows of a timing diagram: units, signals, latches, outputs.</summary>
internal static class TimingLanes
{
    public static ImmutableArray<ImmutableArray<TimingLane>> Of(TraceStory story) =>
        [[.. story.Units.SelectMany(unit => Unit(story, unit))], [.. Signals(story)], [.. Latches(story)], [.. Outputs(story)]];

    private static IEnumerable<TimingLane> Unit(TraceStory story, UnitPlaces unit)
    {
        yield return new TimingLane(
            unit.Name,
            "state",
            [.. Pieces(story, story.History.State(unit.StatePlace), 1).Select(piece => new TimingPiece(piece.From, piece.To, ((UnitState)piece.Value).ToString(), Palette.State((UnitState)piece.Value)))],
            IsBar: false);
        List<TimingPiece> steps = [.. unit.Steps
            .SelectMany(step => Pieces(story, story.History.State(step.Place), 1).Where(piece => piece.Value == 1)
                .Select(piece => new TimingPiece(piece.From, piece.To, Step(story, unit.Name, step.Step), Palette.Step)))
            .OrderBy(piece => piece.From)];
        for (int lane = 0; steps.Count > 0; lane++)
        {
            List<TimingPiece> row = [];
            foreach (TimingPiece step in steps)
            {
                if (row.Count == 0 || row[^1].To <= step.From)
                {
                    row.Add(step with { Colour = row.Count % 2 == 0 ? Palette.Step : Palette.StepOther });
                }
            }

            steps.RemoveAll(step => row.Any(shown => shown.From == step.From && shown.Words == step.Words));
            yield return new TimingLane("", lane == 0 ? "step" : "", [.. row], IsBar: false);
        }
    }

    private static string Step(TraceStory story, string unit, string step) => $"{step} {story.Site.Step(unit, step)?.Title}".TrimEnd();

    private static IEnumerable<TimingLane> Signals(TraceStory story)
    {
        TraceNames names = new(story.Site);
        foreach (TraceInput input in story.Inputs.Where(input => story.Matters(input) || (story.IsNamed(input.Tag) && IsFact(input))))
        {
            IEnumerable<(long From, long To, long Value)> pieces = Pieces(story, story.History.Input(input.Variable.Index), 0);
            string description = story.Site.Signal(input.Tag)?.Description ?? "";
            if (input.Kind is TraceInputKind.Contact or TraceInputKind.ChannelFault || (input.Kind == TraceInputKind.Other && input.Variable.Sort == Sort.Boolean))
            {
                bool isFault = input.Kind == TraceInputKind.ChannelFault;
                yield return new TimingLane(
                    input.Tag,
                    isFault ? "channel bad" : description,
                    [.. pieces.Where(piece => piece.Value != input.Rest).Select(piece => new TimingPiece(piece.From, piece.To, "", isFault ? Palette.BadChannel : Palette.Curve))],
                    IsBar: true);
            }
            else if (input.Kind is TraceInputKind.Reading or TraceInputKind.Setting or TraceInputKind.Other)
            {
                yield return new TimingLane(
                    input.Tag,
                    description,
                    [.. pieces.Select(piece => new TimingPiece(piece.From, piece.To, names.Value(input.Name, input.Variable.Sort, piece.Value), Palette.Grid))],
                    IsBar: false);
            }
        }
    }

    private static bool IsFact(TraceInput input) => input.Kind is TraceInputKind.Contact or TraceInputKind.Reading;

    private static IEnumerable<TimingLane> Latches(TraceStory story) => story.History.System.States
        .Where(state => state.Purpose == StatePurpose.Control && state.Variable.Sort == Sort.Boolean
            && story.Facts.HasState(state.Variable.Index) && TraceMoments.Words(state) is not null)
        .Select(state => new TimingLane(
            state.Variable.Name,
            TraceNames.TitleOf(state.Origin).Trim(' ', '"'),
            [.. Pieces(story, story.History.State(state.Variable.Index), 1).Where(piece => piece.Value == 1).Select(piece => new TimingPiece(piece.From, piece.To, "", Palette.Mark))],
            IsBar: true));

    private static IEnumerable<TimingLane> Outputs(TraceStory story)
    {
        TraceNames names = new(story.Site);
        foreach (OutputVariable output in story.Outputs.OrderBy(output => story.IsNamed(output.Name)))
        {
            (long From, long To, long Value)[] pieces = [.. Pieces(story, story.History.Output(story.History.System.Outputs.IndexOf(output)), 0)];
            if (!story.IsNamed(output.Name) && pieces is [{ Value: 0 }])
            {
                continue;
            }

            string description = story.Site.Signal(output.Name)?.Description ?? "";
            bool isBar = output.Value.Sort == Sort.Boolean;
            yield return new TimingLane(
                output.Name,
                description,
                [.. pieces.Where(piece => !isBar || piece.Value == 1).Select(piece => new TimingPiece(
                    piece.From, piece.To, isBar ? "" : names.Value(output.Name, Sort.Integer, piece.Value), isBar ? Palette.Bar : Palette.Grid))],
                isBar);
        }
    }

    /// <summary>Runs with their ends; a state has its new value behind the scan, so it is shown a scan earlier.</summary>
    private static IEnumerable<(long From, long To, long Value)> Pieces(TraceStory story, ValueRuns runs, long earlier)
    {
        for (int index = 0; index < runs.Runs.Count; index++)
        {
            long from = Math.Max(1, runs.Runs[index].From - earlier);
            long to = index + 1 < runs.Runs.Count ? runs.Runs[index + 1].From - earlier : story.Scans + 1;
            if (from < to)
            {
                yield return (from, to, runs.Runs[index].Value);
            }
        }
    }
}
