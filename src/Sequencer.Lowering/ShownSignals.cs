using Sequencer.Control.TransitionSystems;
using Sequencer.Language.Programs;
using Sequencer.Text;

namespace Sequencer.Lowering;

/// <summary>
/// A unit's inputs as other units see them: what they were in the last scan, so that no unit depends on the order in
/// which units are worked out. They are retained, so that a loss of power alone trips nothing; before the very first scan
/// no switch is so and no reading is usable.
/// </summary>
internal sealed class ShownSignals
{
    private readonly UnitScan _scan;
    private readonly Dictionary<string, Expression> _shown = new(StringComparer.Ordinal);

    public ShownSignals(UnitScan scan) => _scan = scan;

    public Expression Switch(SwitchInput input) => Shown(
        $"{input.Tag}.shown",
        name => _scan.System.State(name, false, retained: true, StatePurpose.Control, new Origin(input.Span)),
        () => _scan.Signals.Switch(input));

    public Expression Reading(AnalogueInput input) => Shown(
        $"{input.Tag}.shown",
        name => _scan.System.State(
            name, new IntegerRange(input.Minimum, input.Maximum), input.Minimum, retained: true, StatePurpose.Control, new Origin(input.Span)),
        () => _scan.Signals.Reading(input));

    public Expression Usable(AnalogueInput input) => Shown(
        $"{input.Tag}.shown_usable",
        name => _scan.System.State(name, false, retained: true, StatePurpose.Control, new Origin(input.Span)),
        () => _scan.Build.And(_scan.Signals.Usable(input), _scan.Build.Not(_scan.Calibrations.Now(input.Tag))));

    private Expression Shown(string name, Func<string, DeclaredState> declare, Func<Expression> now)
    {
        if (!_shown.TryGetValue(name, out Expression? shown))
        {
            DeclaredState state = declare(name);
            _scan.System.Later(() => state.Next = now());
            _shown.Add(name, shown = state.Current);
        }

        return shown;
    }
}
