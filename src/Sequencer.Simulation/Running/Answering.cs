using Sequencer.Simulation.Loop;
using Sequencer.Simulation.Scenarios;

namespace Sequencer.Simulation.Running;

/// <summary>An operator who answers one prompt, in his manner, each time that it is asked.</summary>
internal sealed class Answering(OperatorRule rule, ValueSource asks, int input, int answer)
{
    /// <summary>Far less than a scan: rounding moves no answer into the next one.</summary>
    private const double Tolerance = 1e-6;

    private bool _asked;
    private double? _due;

    public string Words { get; } = $"operator answers {rule.Prompt}: {(rule.Manner == OperatorManner.Wrong ? $"{rule.WrongAnswer} (wrong)" : rule.Answer)}{(rule.Manner == OperatorManner.Late ? " (late)" : "")}";

    /// <summary>True where he answers in this scan. A prompt that is no longer asked needs none.</summary>
    public bool Observe(Hands hands)
    {
        bool asked = hands.Loop.Value(asks) != 0;
        if (!asked)
        {
            _due = null;
        }
        else if (!_asked && rule.Manner != OperatorManner.Never)
        {
            _due = hands.Loop.Seconds + rule.DelaySeconds + (rule.Manner == OperatorManner.Late ? rule.LateSeconds : 0);
        }

        _asked = asked;
        if (_due is not double due || hands.Loop.Seconds < due - Tolerance)
        {
            return false;
        }

        _due = null;
        hands.Press(input, answer);
        return true;
    }
}
