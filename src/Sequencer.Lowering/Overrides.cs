using Sequencer.Control.TransitionSystems;
using Sequencer.Language.Programs;
using Sequencer.Text;

namespace Sequencer.Lowering;

/// <summary>Protections that the operator has taken out of force for a time; one at a time in a unit, ties by written order.</summary>
internal sealed class Overrides
{
    private readonly UnitScan _scan;
    private readonly Dictionary<string, Expression> _now = new(StringComparer.Ordinal);

    public Overrides(UnitScan scan)
    {
        _scan = scan;
        List<(Override Clause, TimedCommand Command)> waivers = [.. scan.Unit.Overrides.Select(waiver => (waiver, new TimedCommand(
            scan, scan.Own($"{waiver.Protection}.override"), waiver.Role, waiver.AtMost.Scans(scan.ScanMilliseconds), new Origin(waiver.Span))))];
        Expression taken = scan.Build.Or(waivers.Select(waiver => waiver.Command.Continues));
        foreach ((Override clause, TimedCommand command) in waivers)
        {
            Expression granted = scan.Build.And(command.AskedByRole, scan.Build.Not(taken));
            taken = scan.Build.Or(taken, granted);
            _now[clause.Protection] = command.Decide(
                command.Continues,
                granted,
                (clause.IsActiveInWords(), clause.HasExpiredInWords(), clause.IsRefusedInWords()),
                ($"The override of {clause.Protection} ends within its time", $"after {clause.Protection} overridden not {clause.Protection} overridden within {clause.AtMost}"));
        }
    }

    /// <summary>The protection is overridden in this scan; false where nothing may override it.</summary>
    public Expression Now(string protection) => _now.GetValueOrDefault(protection, _scan.Build.False);
}
