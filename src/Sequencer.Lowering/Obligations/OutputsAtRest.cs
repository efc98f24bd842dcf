using Sequencer.Control.TransitionSystems;
using Sequencer.Language.Programs;
using Sequencer.Text;

namespace Sequencer.Lowering.Obligations;

/// <summary>
/// In a state without steps each output has the value declared for it: the safe one, while Held what it is held at, or what an
/// emergency asks. What a person drives by hand, and what another unit has claimed, is theirs.
/// </summary>
internal static class OutputsAtRest
{
    private static readonly ProceduralState[] AtRest = [ProceduralState.Idle, ProceduralState.Complete, ProceduralState.Stopped, ProceduralState.Aborted];

    public static void Add(UnitScan scan)
    {
        ExpressionBuilder build = scan.Build;
        if (scan.Unit.Outputs.IsEmpty && scan.Unit.AnalogueOutputs.IsEmpty)
        {
            return;
        }

        Expression safe = build.And(scan.Unit.Outputs.Select(output => Rests(scan, output, RestValues.Value(scan, output, output.Safe, "safe"))));
        Expression held = build.And(scan.Unit.Outputs.Select(output => output.Held is null
            ? Rests(scan, output, RestValues.Value(scan, output, output.Safe, "safe"))
            : Rests(scan, output, RestValues.Value(scan, output, output.Held, "held"))));
        Expression analogues = build.And(scan.Unit.AnalogueOutputs.Where(output => output.MostAScan is null).Select(output => Rests(scan, output)));
        Require(scan, "rest", "at rest everything is safe", $"What {scan.Unit.Name} drives is safe while it is at rest",
            $"always everything safe while {scan.Unit.Name} is Idle, Complete, Stopped or Aborted", AtRest, build.And(safe, analogues));
        Require(scan, "held", "while Held nothing runs but what is declared to", $"What {scan.Unit.Name} drives is held while it is Held",
            $"always everything at its held value while {StandardObligations.State(scan, ProceduralState.Held)}", [ProceduralState.Held], build.And(held, analogues));
        AfterPowerLoss(scan);
    }

    /// <summary>Nothing goes on by itself in the first scan after a loss of power.</summary>
    private static void AfterPowerLoss(UnitScan scan)
    {
        ExpressionBuilder build = scan.Build;
        Expression runs = build.Or(scan.RunningNow, scan.State.IsNow(ProceduralState.Restarting));
        StandardObligations.Require(
            scan, "power", "after a loss of power nothing goes on by itself", $"{scan.Unit.Name} does not go on by itself after a loss of power",
            $"never {scan.Unit.Name} is Running or Restarting in the first scan after a loss of power",
            RequirementKind.Never, build.Not(build.And(scan.Signals.FirstScan, runs)), new Origin(scan.Unit.Span));
    }

    private static void Require(UnitScan scan, string name, string words, string title, string statement, ProceduralState[] states, Expression atRest) =>
        StandardObligations.Require(
            scan, name, words, title, statement, RequirementKind.Never,
            scan.Build.Implies(scan.Build.Or(states.Select(scan.State.IsNow)), atRest), new Origin(scan.Unit.Span));

    private static Expression Rests(UnitScan scan, Output output, Expression value)
    {
        ExpressionBuilder build = scan.Build;
        Expression final = scan.Final(output);
        Expression borrowed = build.Or(StepDemands.Borrowed(scan, output).Select(asks => build.Or(asks.On, asks.Off)));
        return build.Or(
            scan.Finals.InManual(output),
            borrowed,
            build.Equal(final, value),
            build.Equal(final, RestValues.Value(scan, output, output.Safe, "safe")),
            build.And(scan.Emergency, build.Equal(final, RestValues.Value(scan, output, output.Emergency, "emergency"))));
    }

    private static Expression Rests(UnitScan scan, AnalogueOutput output)
    {
        ExpressionBuilder build = scan.Build;
        Expression final = scan.Analogues.Final(output);
        return build.Or(
            scan.Analogues.InManual(output),
            build.Equal(final, build.Constant(output.Safe)),
            build.And(scan.Emergency, build.Equal(final, build.Constant(output.Emergency))));
    }
}
