namespace Sequencer.Language.Programs;

/// <summary>How soon an alarm wants its answer, beside others.</summary>
public enum AlarmPriority
{
    Low,
    Medium,
    High,
}
