using Sequencer.Control.TransitionSystems;
using Sequencer.Language.Programs;
using Sequencer.Lowering.Supposing;
using Sequencer.Text;

namespace Sequencer.Lowering;

/// <summary>Devices that do not obey: what was commanded against what their switches show, for too long.</summary>
internal sealed class Discrepancies
{
    private readonly UnitScan _scan;
    private readonly Dictionary<string, (DeclaredState State, Expression Now)> _latched = new(StringComparer.Ordinal);

    public Discrepancies(UnitScan scan)
    {
        _scan = scan;
        ExpressionBuilder build = scan.Build;
        foreach (Output output in scan.Unit.Outputs)
        {
            if (output.Confirmation is not { } confirmation)
            {
                continue;
            }

            Origin origin = new(confirmation.Span);
            Expression disagrees = build.Not(Confirms(output, scan.LastWritten(output)));
            Expression late = Clocks.Lasting(
                scan.System, $"{output.Tag}.stroke", disagrees, confirmation.Within.Scans(scan.ScanMilliseconds), StatePurpose.Control, origin);
            DeclaredState state = scan.System.State($"{output.Tag}.discrepancy", false, retained: true, StatePurpose.Control, origin);
            Expression keeps = build.And(state.Current, build.Not(build.And(scan.Commands.Reset, build.Not(disagrees))));
            Expression supervised = scan.Site.Forces.Of(ProtectionList.Confirmation(output.Tag));
            Expression now = scan.System.Define($"{output.Tag}.failed", build.Or(build.And(late, supervised), keeps), origin);
            state.Next = now;
            scan.System.Alarm($"{output.Tag}.discrepancy", $"{output.Tag} {output.Description}: does not obey", now, origin);
            _latched[output.Tag] = (state, now);
        }
    }

    public Expression AtStart(Output output) =>
        _latched.TryGetValue(output.Tag, out (DeclaredState State, Expression Now) latched) ? latched.State.Current : _scan.Build.False;

    public Expression Now(Output output) =>
        _latched.TryGetValue(output.Tag, out (DeclaredState State, Expression Now) latched) ? latched.Now : _scan.Build.False;

    /// <summary>Some device does not show what was commanded last.</summary>
    public Expression AnyDisagrees => _scan.Build.Or(_scan.Unit.Outputs.Where(output => output.Confirmation is not null)
        .Select(output => _scan.Build.Not(Confirms(output, _scan.LastWritten(output)))));

    /// <summary>The switches show the position; true for an output without any.</summary>
    public Expression Confirms(Output output, Expression on)
    {
        if (output.Confirmation is not { } confirmation)
        {
            return _scan.Build.True;
        }

        Expression shown = _scan.Build.Equal(_scan.Switch(confirmation.On), on);
        return confirmation.Off is null
            ? shown
            : _scan.Build.And(shown, _scan.Build.Not(_scan.Build.Equal(_scan.Switch(confirmation.Off), on)));
    }
}
