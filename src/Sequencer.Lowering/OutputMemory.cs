using Sequencer.Control.TransitionSystems;
using Sequencer.Language.Programs;
using Sequencer.Lowering.Supposing;
using Sequencer.Text;

namespace Sequencer.Lowering;

/// <summary>What each output was last scan, and what it has delivered in this batch.</summary>
internal sealed class OutputMemory
{
    private readonly UnitScan _scan;
    private readonly Dictionary<string, DeclaredState> _last = new(StringComparer.Ordinal);
    private readonly Dictionary<string, DeclaredState> _totals = new(StringComparer.Ordinal);
    private readonly Dictionary<string, long> _maxima = new(StringComparer.Ordinal);

    public OutputMemory(UnitScan scan)
    {
        _scan = scan;
        foreach (Output output in scan.Unit.Outputs)
        {
            Origin origin = new(output.Span);
            _last[output.Tag] = scan.System.State($"{output.Tag}.last", output.DeEnergised, retained: false, StatePurpose.Control, origin);
            if (output.Delivery is not null)
            {
                if (QuantityMeasure.LargestDose(scan.Unit, output, scan.ScanMilliseconds) is long maximum)
                {
                    _maxima[output.Tag] = maximum;
                }

                IntegerRange range = new(0, QuantityMeasure.LargestTotal);
                _totals[output.Tag] = scan.System.State($"{output.Tag}.total", range, 0, retained: true, StatePurpose.Control, origin);
            }
        }
    }

    public Expression Last(Output output) => _last[output.Tag].Current;

    /// <summary>Scans of delivery in this batch, up to the end of last scan.</summary>
    public Expression Total(Output output) => _totals[output.Tag].Current;

    /// <summary>True when the output has given all that a batch may have; false without a maximum.</summary>
    public Expression Exhausted(Output output) => _maxima.TryGetValue(output.Tag, out long maximum)
        ? _scan.Build.And(_scan.Build.LessOrEqual(_scan.Build.Constant(maximum), Total(output)), _scan.Site.Forces.Of(ProtectionList.Maximum(output.Tag)))
        : _scan.Build.False;

    public void Finish()
    {
        ExpressionBuilder build = _scan.Build;
        foreach (Output output in _scan.Unit.Outputs)
        {
            Expression final = _scan.Final(output);
            _last[output.Tag].Next = final;
            if (_totals.TryGetValue(output.Tag, out DeclaredState? total))
            {
                Expression before = build.IfThenElse(_scan.State.Started, build.Constant(0), total.Current);
                total.Next = build.IfThenElse(final, Clocks.UpTo(build, before, total.Variable.Range.Maximum), before);
            }
        }
    }
}
