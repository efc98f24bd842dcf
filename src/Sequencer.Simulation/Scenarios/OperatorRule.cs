using Sequencer.Text;

namespace Sequencer.Simulation.Scenarios;

/// <summary>
/// How an operator answers a prompt, each time that it is asked: with <see cref="Answer"/> after <see cref="DelaySeconds"/>, or by
/// his manner <see cref="LateSeconds"/> later than that, never, or with <see cref="WrongAnswer"/> ("" where the manner is another).
/// </summary>
public sealed record OperatorRule(
    string Prompt, string Answer, double DelaySeconds, OperatorManner Manner, double LateSeconds, string WrongAnswer, SourceSpan Span);
