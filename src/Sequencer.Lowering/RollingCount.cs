using Sequencer.Control.TransitionSystems;
using Sequencer.Language.Programs;
using Sequencer.Text;

namespace Sequencer.Lowering;

/// <summary>
/// A count over the last time, in equal parts: the part that is being filled and as many full ones as make up the time. What
/// is in the oldest part counts until all of it is older. The clock of a part stands while the power is off, so that
/// nothing leaves early. The sum is kept beside its parts, so that a condition compares one number.
/// </summary>
internal sealed class RollingCount
{
    private readonly UnitScan _scan;
    private readonly Count _count;
    private readonly DeclaredState _sum;
    private readonly DeclaredState[] _parts;
    private readonly DeclaredState _clock;

    public RollingCount(UnitScan scan, Count count, CountWindow window)
    {
        _scan = scan;
        _count = count;
        Origin origin = new(count.Span);
        IntegerRange range = new(0, count.Maximum);
        _sum = scan.System.State(scan.Named(count.Name), new IntegerRange(0, count.Largest), 0, retained: true, StatePurpose.Control, origin);
        _parts = [.. Enumerable.Range(0, window.Parts + 1).Select(part => scan.System.State(
            scan.Named(FormattableString.Invariant($"{count.Name}.part{part}")), range, 0, retained: true, StatePurpose.Control, origin))];
        long last = window.ScansOfAPart(scan.ScanMilliseconds) - 1;
        _clock = scan.System.State(scan.Named($"{count.Name}.clock"), new IntegerRange(0, Math.Max(1, last)), 0, retained: true, StatePurpose.Control, origin);
    }

    /// <summary>The sum of all parts at the start of the scan.</summary>
    public Expression AtStart => _sum.Current;

    public void Finish(Expression comes)
    {
        ExpressionBuilder build = _scan.Build;
        CountWindow window = _count.Window ?? throw new InvalidOperationException($"{_count.Name} counts over no time");
        long last = window.ScansOfAPart(_scan.ScanMilliseconds) - 1;
        Expression full = build.LessOrEqual(build.Constant(last), _clock.Current);
        Expression filled = build.IfThenElse(comes, Counts.Changed(build, _count, _parts[0].Current), _parts[0].Current);
        Expression counted = Bounded(build.Add(_sum.Current, filled, build.Scale(-1, _parts[0].Current)));
        _sum.Next = build.IfThenElse(full, Bounded(build.Subtract(counted, _parts[^1].Current)), counted);
        _clock.Next = build.IfThenElse(full, build.Constant(0), Clocks.UpTo(build, _clock.Current, _clock.Variable.Range.Maximum));
        _parts[0].Next = build.IfThenElse(full, build.Constant(0), filled);
        for (int part = 1; part < _parts.Length; part++)
        {
            _parts[part].Next = build.IfThenElse(full, part == 1 ? filled : _parts[part - 1].Current, _parts[part].Current);
        }
    }

    /// <summary>Never active: the sum is that of its parts. It keeps the range plain to every reader.</summary>
    private Expression Bounded(Expression sum)
    {
        ExpressionBuilder build = _scan.Build;
        return build.Maximum(build.Constant(0), build.Minimum(sum, build.Constant(_count.Largest)));
    }
}
