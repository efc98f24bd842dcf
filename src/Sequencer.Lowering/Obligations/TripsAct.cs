using Sequencer.Control.TransitionSystems;
using Sequencer.Language.Programs;
using Sequencer.Text;

namespace Sequencer.Lowering.Obligations;

/// <summary>A latched trip has brought the unit where its reaction leads in the scan in which it latches, and keeps it from there.</summary>
internal static class TripsAct
{
    public static void Add(UnitScan scan)
    {
        ExpressionBuilder build = scan.Build;
        foreach (Trip trip in scan.Unit.Trips.Where(trip => trip.Reaction != Reaction.Alarm))
        {
            ProceduralState[] left = Left(trip.Reaction);
            Expression acts = build.Not(build.Or(left.Select(scan.State.IsNow)));
            if (trip.Reaction == Reaction.Emergency)
            {
                acts = build.And(acts, AtEmergency(scan));
            }

            string states = $"{string.Join(", ", left[..^1])} or {left[^1]}";
            string asked = trip.Reaction == Reaction.Emergency ? " and everything is at its emergency value" : "";
            StandardObligations.Require(
                scan, $"{trip.Name}.acts", "each trip acts in its own scan, and until it is reset", $"{trip.Name} acts: {trip.Title}",
                $"while {scan.Own(trip.Name)} is latched {scan.Unit.Name} is not {states}{asked}",
                RequirementKind.Never, build.Implies(scan.Trips.Tripped(trip), acts), new Origin(trip.Span));
        }
    }

    private static ProceduralState[] Left(Reaction reaction) => reaction switch
    {
        Reaction.Hold => [ProceduralState.Running, ProceduralState.Restarting],
        Reaction.Stop => [ProceduralState.Running, ProceduralState.Holding, ProceduralState.Held, ProceduralState.Restarting],
        _ =>
        [
            ProceduralState.Running, ProceduralState.Holding, ProceduralState.Held, ProceduralState.Restarting,
            ProceduralState.Stopping, ProceduralState.Stopped,
        ],
    };

    private static Expression AtEmergency(UnitScan scan) => scan.Build.And(
    [
        .. scan.Unit.Outputs.Select(output => scan.Build.Equal(scan.Final(output), RestValues.Value(scan, output, output.Emergency, "emergency"))),
        .. scan.Unit.AnalogueOutputs.Select(output => scan.Build.Equal(scan.Analogues.Final(output), scan.Build.Constant(output.Emergency))),
    ]);
}
