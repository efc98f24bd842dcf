using Sequencer.Control.TransitionSystems;
using Sequencer.Language.Programs;
using Sequencer.Text;

namespace Sequencer.Lowering;

/// <summary>The author's own remembered facts; clearing wins over setting.</summary>
internal sealed class Latches
{
    private readonly UnitScan _scan;
    private readonly Dictionary<string, DeclaredState> _states = new(StringComparer.Ordinal);

    public Latches(UnitScan scan)
    {
        _scan = scan;
        foreach (Latch latch in scan.Unit.Latches)
        {
            _states[latch.Name] = scan.System.State(
                scan.Named(latch.Name), false, latch.Retained, StatePurpose.Control, new Origin(latch.Span));
        }
    }

    public Expression AtStart(string latch) => _states[latch].Current;

    public void Finish()
    {
        ExpressionBuilder build = _scan.Build;
        foreach (Latch latch in _scan.Unit.Latches)
        {
            Truth set = ConditionLowering.Lower(_scan, latch.Set, new ConditionPlace(_scan.Named($"{latch.Name}.set")));
            Truth clear = ConditionLowering.Lower(_scan, latch.Clear, new ConditionPlace(_scan.Named($"{latch.Name}.clear")));
            DeclaredState state = _states[latch.Name];
            state.Next = build.And(build.Not(clear.Possibly), build.Or(state.Current, set.Surely));
        }
    }
}
