using Sequencer.Control.TransitionSystems;
using Sequencer.Text;

namespace Sequencer.Lowering;

/// <summary>The operator's commands act on their rising edge; a button held through a power-up gives none.</summary>
internal sealed class OperatorCommands
{
    public OperatorCommands(UnitScan scan)
    {
        Start = Edge(scan, "start");
        Hold = Edge(scan, "hold");
        Restart = Edge(scan, "restart");
        Stop = Edge(scan, "stop");
        Abort = Edge(scan, "abort");
        Reset = Edge(scan, "reset");
    }

    public Expression Start { get; }

    public Expression Hold { get; }

    public Expression Restart { get; }

    public Expression Stop { get; }

    public Expression Abort { get; }

    public Expression Reset { get; }

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
