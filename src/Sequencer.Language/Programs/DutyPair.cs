using Sequencer.Language.Units;
using Sequencer.Text;

namespace Sequencer.Language.Programs;

/// <summary>
/// Two like devices for one demand: one on duty, the other takes over when the first fails, is in manual
/// or is interlocked. Never both; with one of them healthy the demand is met within <see cref="Within"/>.
/// </summary>
public sealed record DutyPair(
    string Name,
    string Title,
    Output First,
    Output Second,
    bool FirstOnDuty,
    Duration Within,
    bool Rotates,
    SourceSpan Span)
{
    /// <summary>A rotating pair changes at each start, so that its first batch has the declared duty.</summary>
    public bool SecondAtFirst => FirstOnDuty == Rotates;

    public string HasChangedInWords() => $"{Title}: the standby of {Name} has taken over";

    public string HasNoneInWords() => $"{Title}: neither {First.Tag} nor {Second.Tag} is available";
}
