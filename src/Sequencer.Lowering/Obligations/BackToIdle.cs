using Sequencer.Control.TransitionSystems;
using Sequencer.Language.Programs;
using Sequencer.Language.Units;
using Sequencer.Text;

namespace Sequencer.Lowering.Obligations;

/// <summary>
/// From every state there is a way back: an operator who aborts, and, with every cause gone, resets, has the unit Idle within a
/// bound. The script names commands only, so that it holds for any plant: it fixes no reading and no switch.
/// </summary>
internal static class BackToIdle
{
    /// <summary>The scan of the abort, the one in which the unit is seen Aborted, and the one of the reset.</summary>
    private const int ScansOfCommands = 3;

    private static readonly ProceduralState[] InProgress =
        [ProceduralState.Running, ProceduralState.Holding, ProceduralState.Held, ProceduralState.Restarting, ProceduralState.Stopping];

    private static readonly ProceduralState[] Ended = [ProceduralState.Complete, ProceduralState.Stopped, ProceduralState.Aborted];

    public static void Add(UnitScan scan, TransientTime aborting)
    {
        ExpressionBuilder build = scan.Build;
        Origin origin = new(scan.Unit.Span);
        long bound = aborting.Most + ScansOfCommands;
        Expression follows = Follows(scan);
        (Expression before, Expression age) = StandardObligations.ScansInARow(scan, "way_back.age", follows, build.True, bound, origin);
        string script = "abort while it is in progress; once it has ended, with every cause gone, reset; no start";
        StandardObligations.Require(
            scan, "way_back", "from every state there is a way back to Idle", $"From every state {scan.Unit.Name} can be brought back to Idle",
            $"after the operator's script ({script}) {StandardObligations.State(scan, ProceduralState.Idle)} within {new Duration(bound * scan.ScanMilliseconds).InParts()}",
            RequirementKind.Response,
            build.Implies(
                build.And(follows, build.LessOrEqual(build.Constant(bound - 1), before)),
                scan.State.IsNow(ProceduralState.Idle)),
            origin,
            [.. aborting.Guesses, .. Guesses(scan, age, aborting)]);
    }

    /// <summary>Where the script has brought the unit after so many scans.</summary>
    private static IEnumerable<Expression> Guesses(UnitScan scan, Expression age, TransientTime aborting)
    {
        ExpressionBuilder build = scan.Build;
        Expression none = build.Equal(age, build.Constant(0));
        yield return build.Implies(build.Or(InProgress.Select(scan.State.StoredIs)), none);
        yield return build.Implies(scan.State.StoredIs(ProceduralState.Aborting), build.LessOrEqual(age, aborting.Age));
        yield return build.Implies(
            build.Or(Ended.Select(scan.State.StoredIs)), build.LessOrEqual(age, build.Constant(aborting.Most + 1)));
    }

    /// <summary>The operator does in this scan what the script says for the state that it begins in.</summary>
    private static Expression Follows(UnitScan scan)
    {
        ExpressionBuilder build = scan.Build;
        OperatorCommands commands = scan.Commands;
        Expression inProgress = build.Or(InProgress.Select(scan.State.WasAtStart));
        Expression ended = build.Or(Ended.Select(scan.State.WasAtStart));
        IEnumerable<Expression> resets = scan.Unit.Groups.Select(group => commands.ResetOf(group.Name)).Prepend(commands.Reset);
        Expression causesGone = build.Not(build.Or(
            scan.Trips.AnyCause, scan.Discrepancies.AnyDisagrees, scan.Assumptions.Ask(Reaction.Abort), scan.Assumptions.Ask(Reaction.Emergency)));
        return build.And(
            build.Not(build.Or(commands.Start, commands.Hold, commands.Restart, commands.Stop, scan.Requests.Wanted)),
            build.Implies(inProgress, commands.Abort),
            build.Implies(ended, build.And([build.Not(commands.Abort), causesGone, .. resets])));
    }
}
