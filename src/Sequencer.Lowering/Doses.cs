using Sequencer.Control.TransitionSystems;
using Sequencer.Language.Programs;

namespace Sequencer.Lowering;

/// <summary>All doses of the unit, by step.</summary>
internal sealed class Doses
{
    private readonly UnitScan _scan;
    private readonly List<Dose> _doses = [];
    private readonly List<AmountDose> _amounts = [];

    public Doses(UnitScan scan)
    {
        _scan = scan;
        foreach (Step step in scan.Unit.Steps)
        {
            foreach (DoseAction action in step.Actions.OfType<DoseAction>())
            {
                _doses.Add(new Dose(scan, step, action));
            }

            foreach (AmountDoseAction action in step.Actions.OfType<AmountDoseAction>())
            {
                _amounts.Add(new AmountDose(scan, step, action));
            }
        }
    }

    public Expression PulseAtStart(Step step) =>
        _scan.Build.Or(_doses.Where(dose => dose.Step == step).Select(dose => dose.PulseAtStart));

    public Expression Ask(Reaction reaction) => _scan.Build.Or(
        [.. _doses.Select(dose => dose.Ask(reaction)), .. _amounts.Select(dose => dose.Ask(reaction))]);

    /// <summary>The step's dose by amount is given, as of the start of the scan.</summary>
    public Expression Dosed(int step, Output output) =>
        _amounts.First(dose => dose.Step.Number == step && dose.Action.Output.Tag == output.Tag).Dosed;

    /// <summary>Some dose gives on the output in this scan.</summary>
    public Expression Demands(Output output) => _scan.Build.Or(
    [
        .. _doses.Where(dose => dose.Action.Output.Tag == output.Tag).Select(dose => dose.PulseNow),
        .. _amounts.Where(dose => dose.Action.Output.Tag == output.Tag).Select(dose => dose.Demand),
    ]);

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

        foreach (AmountDose dose in _amounts)
        {
            dose.Lower();
        }
    }
}
