using Sequencer.Control.TransitionSystems;
using Sequencer.Language.Programs;
using Sequencer.Text;

namespace Sequencer.Lowering;

/// <summary>
/// What the steps of a unit claim. Until all of it is granted a step waits: what it does and its clocks begin with the grant.
/// The wait has a clock of its own, which counts the scans that it has lasted in Running.
/// </summary>
internal sealed class UnitClaims
{
    private readonly UnitScan _scan;
    private readonly List<Wait> _waits = [];
    private readonly List<(Output Output, DeclaredState On, DeclaredState Off)> _asked = [];

    public UnitClaims(UnitScan scan)
    {
        _scan = scan;
        foreach (Step step in scan.Unit.Steps)
        {
            foreach (Claim claim in step.Claims)
            {
                string name = scan.StepNamed(step.Number, FormattableString.Invariant($"claim{step.Claims.IndexOf(claim) + 1}"));
                IntegerRange range = new(0, Math.Max(1, claim.Limit.Scans(scan.ScanMilliseconds)));
                Origin origin = new(claim.Span);
                _waits.Add(new Wait(step, claim, name, scan.System.State($"{name}.clock", range, 0, retained: true, StatePurpose.Control, origin), origin));
            }
        }

        foreach (Output output in scan.Unit.DrivenElsewhere)
        {
            string name = scan.Named(QualifiedName.Split(output.Tag).Name);
            DeclaredState Flag(string aspect) => scan.System.State($"{name}.{aspect}.shown", false, retained: false, StatePurpose.Control, new Origin(output.Span));
            _asked.Add((output, Flag("asks_on"), Flag("asks_off")));
        }
    }

    /// <summary>Everything that the step claims was the unit's at the start of the scan; true where it claims nothing.</summary>
    public Expression Owns(Step step) => _scan.Build.And(step.Claims.Select(claim => Owns(claim.Equipment)));

    /// <summary>As <see cref="Owns(Step)"/>, or the step is passed over and waits for nothing.</summary>
    public Expression LeadsOn(Step step) => step.Claims.IsEmpty
        ? _scan.Build.True
        : _scan.Build.Or(_scan.Situation.PassedOverAtStart(step.Number), Owns(step));

    /// <summary>A wait beyond its limit asks for this reaction.</summary>
    public Expression Ask(Reaction reaction) => _scan.Build.Or(_waits.Where(wait => wait.Claim.Reaction == reaction).Select(Expired));

    /// <summary>A step that claims the equipment is active behind this scan's transitions.</summary>
    public Expression Wants(string equipment) => _scan.Build.Or(_waits.Where(wait => wait.Claim.Equipment == equipment).Select(wait => _scan.Build.And(
        IsActive(wait.Step), wait.Claim.ReleasedWhileHeld ? _scan.RunningNow : _scan.Build.True)));

    /// <summary>What the steps asked of another unit's output in the last scan.</summary>
    public (Expression On, Expression Off) Asked(string tag)
    {
        (_, DeclaredState on, DeclaredState off) = _asked.First(asked => asked.Output.Tag == tag);
        return (on.Current, off.Current);
    }

    public void Finish()
    {
        ExpressionBuilder build = _scan.Build;
        foreach (Wait wait in _waits)
        {
            Expression waits = _scan.System.Define(
                $"{wait.Name}.waits", build.And(IsActive(wait.Step), _scan.RunningNow, build.Not(Owns(wait.Claim.Equipment))), wait.Origin);
            Expression lasted = build.IfThenElse(AtWork(wait.Step), wait.Clock.Current, build.Constant(0));
            wait.Clock.Next = build.IfThenElse(waits, Clocks.UpTo(build, lasted, Limit(wait)), build.Constant(0));
            _scan.System.Alarm(wait.Name, wait.Claim.Message, Expired(wait), wait.Origin);
            Owed(wait, waits, lasted);
        }

        foreach ((Output output, DeclaredState on, DeclaredState off) in _asked)
        {
            (on.Next, off.Next) = StepDemands.Of(_scan, output);
        }
    }

    /// <summary>What each claim owes without being asked: its wait ends.</summary>
    private void Owed(Wait wait, Expression waits, Expression lasted) => _scan.System.Require(new Requirement(
        $"{wait.Name}.ends",
        $"{_scan.Unit.Name} waits for {wait.Claim.Equipment} in step {wait.Step.Number} no longer than its limit",
        $"never {_scan.Unit.Name} at step {wait.Step.Number} and {_scan.Unit.Name} is Running and not {wait.Claim.Equipment} granted for more than {wait.Claim.Limit}",
        RequirementKind.Response,
        _scan.Build.Not(_scan.Build.And(waits, _scan.Build.LessOrEqual(_scan.Build.Constant(Limit(wait)), lasted))),
        wait.Origin));

    private static long Limit(Wait wait) => wait.Clock.Variable.Range.Maximum;

    /// <summary>The step was active at the start of the scan, in Running.</summary>
    private Expression AtWork(Step step) => _scan.Build.And(_scan.StepAtStart(step.Number), _scan.State.WasAtStart(ProceduralState.Running));

    private Expression IsActive(Step step) => _scan.Build.And(_scan.StepNow(step.Number), _scan.Build.Not(_scan.Situation.PassedOverNow(step.Number)));

    private Expression Expired(Wait wait) => _scan.Build.And(
        AtWork(wait.Step),
        _scan.Build.Not(Owns(wait.Claim.Equipment)),
        _scan.Build.LessOrEqual(_scan.Build.Constant(Limit(wait)), wait.Clock.Current));

    private Expression Owns(string equipment) => _scan.Site.Queue(equipment).Owns(_scan.Unit.Name);

    private sealed record Wait(Step Step, Claim Claim, string Name, DeclaredState Clock, Origin Origin);
}
