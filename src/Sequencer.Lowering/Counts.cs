using Sequencer.Control.TransitionSystems;
using Sequencer.Language.Programs;
using Sequencer.Text;

namespace Sequencer.Lowering;

/// <summary>Counts, in steps of their resolution; over a time a count is the sum of its parts.</summary>
internal sealed class Counts
{
    private readonly UnitScan _scan;
    private readonly Dictionary<string, DeclaredState> _values = new(StringComparer.Ordinal);
    private readonly Dictionary<string, RollingCount> _rolling = new(StringComparer.Ordinal);

    public Counts(UnitScan scan)
    {
        _scan = scan;
        foreach (Count count in scan.Unit.Counts)
        {
            if (count.Window is { } window)
            {
                _rolling[count.Name] = new RollingCount(scan, count, window);
                continue;
            }

            _values[count.Name] = scan.System.State(
                scan.Named(count.Name), new IntegerRange(count.Minimum, count.Maximum), count.Initial, retained: true, StatePurpose.Control, new Origin(count.Span));
        }
    }

    /// <summary>The value at the start of the scan.</summary>
    public Expression AtStart(string count) => _rolling.TryGetValue(count, out RollingCount? rolling) ? rolling.AtStart : _values[count].Current;

    public void Finish()
    {
        ExpressionBuilder build = _scan.Build;
        foreach (Count count in _scan.Unit.Counts)
        {
            Expression comes = _scan.System.Define(
                _scan.Named($"{count.Name}.comes"),
                ConditionLowering.Lower(_scan, count.Each, new ConditionPlace(_scan.Named($"{count.Name}.each"))).Surely,
                new Origin(count.Each.Span));
            if (_rolling.TryGetValue(count.Name, out RollingCount? rolling))
            {
                rolling.Finish(comes);
                continue;
            }

            DeclaredState value = _values[count.Name];
            Expression counted = build.IfThenElse(comes, Changed(build, count, value.Current), value.Current);
            Expression set = count.SetWhen is { } when
                ? ConditionLowering.Lower(_scan, when, new ConditionPlace(_scan.Named($"{count.Name}.set"))).Surely
                : build.False;
            value.Next = build.IfThenElse(set, build.Constant(count.SetTo), counted);
        }
    }

    /// <summary>One step on, and no further than the end of the range.</summary>
    public static Expression Changed(ExpressionBuilder build, Count count, Expression value)
    {
        Expression changed = build.Add(value, build.Constant(count.Change));
        return count.Change > 0
            ? build.Minimum(changed, build.Constant(count.Maximum))
            : build.Maximum(changed, build.Constant(count.Minimum));
    }
}
