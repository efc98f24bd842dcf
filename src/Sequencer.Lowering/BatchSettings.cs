using Sequencer.Control.TransitionSystems;
using Sequencer.Language.Programs;
using Sequencer.Text;

namespace Sequencer.Lowering;

/// <summary>
/// Parameters: the operator's setting is free in every scan (any 32-bit value: a retained variable may
/// hold anything), the batch works with the copy taken at its start.
/// </summary>
internal sealed class BatchSettings
{
    private readonly UnitScan _scan;
    private readonly Dictionary<string, (Parameter Parameter, Expression Setting, DeclaredState Batch)> _settings = new(StringComparer.Ordinal);

    public BatchSettings(UnitScan scan)
    {
        _scan = scan;
        foreach (Parameter parameter in scan.Unit.Parameters)
        {
            string name = scan.Named(parameter.Name);
            Expression setting = scan.System.Input($"{name}.setting", new IntegerRange(int.MinValue, int.MaxValue));
            DeclaredState batch = scan.System.State(
                $"{name}.batch", new IntegerRange(parameter.Minimum, parameter.Maximum), parameter.Default, retained: true, StatePurpose.Control, new Origin(parameter.Span));
            _settings[parameter.Name] = (parameter, setting, batch);
        }
    }

    public Expression BatchValue(Parameter parameter) => _settings[parameter.Name].Batch.Current;

    /// <summary>Every setting is in its range.</summary>
    public Expression InRange => _scan.Build.And(_settings.Values.Select(entry => _scan.Build.And(
        _scan.Build.LessOrEqual(_scan.Build.Constant(entry.Parameter.Minimum), entry.Setting),
        _scan.Build.LessOrEqual(entry.Setting, _scan.Build.Constant(entry.Parameter.Maximum)))));

    public void Finish()
    {
        ExpressionBuilder build = _scan.Build;
        foreach ((Parameter parameter, Expression setting, DeclaredState batch) in _settings.Values)
        {
            Expression limited = build.Maximum(
                build.Constant(parameter.Minimum), build.Minimum(setting, build.Constant(parameter.Maximum)));
            batch.Next = build.IfThenElse(_scan.State.Started, limited, batch.Current);
        }
    }
}
