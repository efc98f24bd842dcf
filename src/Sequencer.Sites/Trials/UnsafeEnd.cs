namespace Sequencer.Sites.Trials;

/// <summary>Ways in which a run ends unsafe (spec/trials.md says what each means), the worst first.</summary>
[Flags]
internal enum UnsafeEnd
{
    None = 0,
    RequirementBroken = 1,
    DoseLimitPassed = 2,
    OutsideConsent = 4,
    Overflow = 8,
    NoEnd = 16,
    ModelStopped = 32,
    NotPlayable = 64,
}
