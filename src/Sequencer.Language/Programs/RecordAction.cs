using Sequencer.Text;

namespace Sequencer.Language.Programs;

/// <summary>Keeps the last usable value that a reading, total or parameter has while the step is active.</summary>
public sealed record RecordAction(string Title, Quantity Value, SourceSpan Span) : StepAction(Span)
{
    /// <summary>The records of a step, each with its number, from 1.</summary>
    public static IEnumerable<(RecordAction Record, int Number)> Of(Step step) =>
        step.Actions.OfType<RecordAction>().Select((record, index) => (record, index + 1));
}
