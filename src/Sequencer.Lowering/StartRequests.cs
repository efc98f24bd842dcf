using Sequencer.Control.TransitionSystems;
using Sequencer.Language.Programs;
using Sequencer.Text;

namespace Sequencer.Lowering;

/// <summary>
/// Units that start one another, by a handshake that no hold and no loss of power turns into two starts: the request stands
/// while a step that asks is active; the unit asked remembers that it has started on it until it has seen it go.
/// </summary>
internal sealed class StartRequests
{
    private readonly UnitScan _scan;
    private readonly Dictionary<string, (DeclaredState Stands, DeclaredState Starts)> _asks = new(StringComparer.Ordinal);
    private readonly Dictionary<string, DeclaredState> _taken = new(StringComparer.Ordinal);

    public StartRequests(UnitScan scan)
    {
        _scan = scan;
        foreach (string asked in scan.Unit.AskedUnits)
        {
            Origin origin = new(Asking(asked).First().Ask.Span);
            _asks[asked] = (
                scan.System.State(scan.Named($"ask.{asked}.stands"), false, retained: true, StatePurpose.Control, origin),
                scan.System.State(scan.Named($"ask.{asked}.starts"), false, retained: false, StatePurpose.Control, origin));
        }

        foreach (Asker asker in scan.Unit.Askers)
        {
            _taken[asker.Unit] = scan.System.State(
                scan.Named($"asked.{asker.Unit}.taken"), false, retained: true, StatePurpose.Control, new Origin(asker.Span));
        }
    }

    /// <summary>Some unit asks for a start that has not been taken; false where none may ask.</summary>
    public Expression Wanted => _scan.Build.Or(_taken.Select(asker => _scan.Build.And(From(asker.Key).Starts.Current, _scan.Build.Not(asker.Value.Current))));

    /// <summary>The start that the unit asks for has been taken.</summary>
    public Expression TakenFrom(string asker) => _taken[asker].Current;

    public void Finish()
    {
        ExpressionBuilder build = _scan.Build;
        foreach ((string asked, (DeclaredState stands, DeclaredState starts)) in _asks)
        {
            Step[] steps = [.. Asking(asked).Select(asking => asking.Step)];
            stands.Next = build.Or(steps.Select(IsActive));
            starts.Next = build.Or(steps.Select(step => build.And(IsActive(step), _scan.WorksNow(step))));
        }

        foreach ((string asker, DeclaredState taken) in _taken)
        {
            (DeclaredState stands, DeclaredState starts) = From(asker);
            taken.Next = build.And(stands.Current, build.Or(taken.Current, build.And(_scan.State.Started, starts.Current)));
        }
    }

    private (DeclaredState Stands, DeclaredState Starts) From(string asker) => _scan.Site.Unit(asker).Requests._asks[_scan.Unit.Name];

    private Expression IsActive(Step step) => _scan.Build.And(_scan.StepNow(step.Number), _scan.Build.Not(_scan.Situation.PassedOverNow(step.Number)));

    private IEnumerable<(Step Step, Ask Ask)> Asking(string asked) =>
        _scan.Unit.Steps.SelectMany(step => step.Asks.Where(ask => ask.Unit == asked).Select(ask => (step, ask)));
}
