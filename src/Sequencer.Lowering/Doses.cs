using Sequencer.Control.TransitionSystems;
using Sequencer.Language.Programs;

namespace Sequencer.Lowering;

/// <summary>All doses of the unit, by step.</summary>
internal sealed class Doses
{
    private readonly UnitScan _scan;
    private readonly List<Dose> _doses = [];

    public Doses(UnitScan scan)
    {
        _scan = scan;
        foreach (Step step in scan.Unit.Steps)
        {
            foreach (DoseAction action in step.Actions.OfType<DoseAction>())
            {
                _doses.Add(new Dose(scan, step, action));
            }
        }
    }

    public Expression PulseAtStart(Step step) =>
        _scan.Build.Or(_doses.Where(dose => dose.Step == step).Select(dose => dose.PulseAtStart));

    public Expression Ask(Reaction reaction) => _scan.Build.Or(_doses.Select(dose => dose.Ask(reaction)));

    /// <summary>Some dose gives a pulse on the output in this scan.</summary>
    public Expression Demands(Output output) =>
        _scan.Build.Or(_doses.Where(dose => dose.Action.Output.Tag == output.Tag).Select(dose => dose.PulseNow));

    public void Measure()
    {
        foreach (Dose dose in _doses)
        {
            dose.Measure();
        }
    }

    public void Pulse()
    {
        foreach (Dose dose in _doses)
        {
            dose.Pulse();
        }
    }
}
