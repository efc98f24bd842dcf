using Sequencer.Control.TransitionSystems;
using Sequencer.Language.Programs;
using Sequencer.Text;

namespace Sequencer.Lowering;

/// <summary>
/// Memory that something else than the program has changed. The procedural state and which steps are active are kept twice; where
/// the two differ at the start of a scan the unit aborts from whatever state it seems to be in, and every output has its emergency
/// value until a reset. While memory keeps what is written it never acts, which every unit owes.
/// </summary>
internal sealed class MemoryWatch
{
    private readonly UnitScan _scan;
    private readonly Origin _origin;
    private readonly List<(DeclaredState Kept, DeclaredState Copy)> _pairs = [];
    private readonly DeclaredState _latched;

    public MemoryWatch(UnitScan scan)
    {
        _scan = scan;
        _origin = new Origin(scan.Unit.Span);
        Copy(scan.State.Kept);
        foreach (Step step in scan.Unit.Steps)
        {
            Copy(scan.Situation.Kept(step.Number));
        }

        _latched = scan.System.State(scan.Named("memory.latched"), false, retained: true, StatePurpose.Watch, _origin);
        ExpressionBuilder build = scan.Build;
        Differs = scan.System.Define(
            scan.Named("memory.differs"), build.Or(_pairs.Select(pair => build.Not(build.Equal(pair.Kept.Current, pair.Copy.Current)))), _origin);
        Latched = scan.System.Define(
            scan.Named("memory.acts"), build.Or(Differs, build.And(_latched.Current, build.Not(scan.Commands.ResetOf(null)))), _origin);
    }

    /// <summary>What is kept twice differs at the start of this scan.</summary>
    public Expression Differs { get; }

    /// <summary>It does, or did and no reset has come since.</summary>
    public Expression Latched { get; }

    public void Finish()
    {
        foreach ((DeclaredState kept, DeclaredState copy) in _pairs)
        {
            copy.Next = kept.Next;
        }

        _latched.Next = Latched;
        _scan.System.Alarm(_scan.Named("memory"), "State or steps are not as the program wrote them", Latched, _origin);
    }

    private void Copy(DeclaredState kept)
    {
        string name = $"{kept.Variable.Name}.copy";
        DeclaredState copy = kept.Variable.Sort == Sort.Boolean
            ? _scan.System.State(name, kept.Initial == 1, kept.Retained, StatePurpose.Watch, kept.Origin)
            : _scan.System.State(name, kept.Variable.Range, kept.Initial, kept.Retained, StatePurpose.Watch, kept.Origin);
        _pairs.Add((kept, copy));
    }
}
