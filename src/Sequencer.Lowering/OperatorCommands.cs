using Sequencer.Control.TransitionSystems;
using Sequencer.Language.Programs;
using Sequencer.Text;

namespace Sequencer.Lowering;

/// <summary>The operator's commands act on their rising edge; a button held through a power-up gives none.</summary>
internal sealed class OperatorCommands
{
    private readonly Dictionary<string, Expression> _groupResets = new(StringComparer.Ordinal);

    public OperatorCommands(UnitScan scan)
    {
        Start = Edge(scan, "start");
        Hold = Edge(scan, "hold");
        Restart = Edge(scan, "restart");
        Stop = Edge(scan, "stop");
        Abort = Edge(scan, "abort");
        Reset = Edge(scan, "reset");
        Acknowledge = scan.Unit.Alarms.Any(alarm => alarm.Response is not null) ? Edge(scan, "acknowledge") : scan.Build.False;
        Advances = scan.Unit.HandAdvance is null
            ? scan.Build.True
            : scan.Build.Or(scan.Build.Not(scan.System.Input(scan.Named("by_hand"))), Edge(scan, "advance"));
        foreach (ProtectionGroup group in scan.Unit.Groups)
        {
            _groupResets[group.Name] = Edge(scan, $"{group.Name}.reset");
        }
    }

    public Expression Start { get; }

    public Expression Hold { get; }

    public Expression Restart { get; }

    public Expression Stop { get; }

    public Expression Abort { get; }

    /// <summary>All alarms that are shown; false where the unit has none to acknowledge.</summary>
    public Expression Acknowledge { get; }

    /// <summary>Steps go on: by themselves, or, where they are let go by hand, with each press of the button.</summary>
    public Expression Advances { get; }

    /// <summary>The unit's own reset.</summary>
    public Expression Reset { get; }

    /// <summary>The reset of a group of protections; null is the unit's own.</summary>
    public Expression ResetOf(string? group) => group is null ? Reset : _groupResets[group];

    private static Expression Edge(UnitScan scan, string command)
    {
        Origin origin = new(scan.Unit.Span);
        Expression pressed = scan.System.Input(scan.Named(command));
        DeclaredState before = scan.System.State(scan.Named($"{command}.before"), true, retained: false, StatePurpose.Control, origin);
        before.Next = pressed;
        return scan.System.Define(
            scan.Named($"{command}.edge"), scan.Build.And(pressed, scan.Build.Not(before.Current)), origin);
    }
}
