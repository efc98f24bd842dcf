namespace Sequencer.Language.Rules.Analysis;

/// <summary>What a condition is there for.</summary>
internal enum ConditionRole
{
    Transition,
    StepOnlyIf,
    DriveWhile,
    DriveUntil,
    Interlock,
    InterlockRelease,
    Permissive,
    Trip,
    Alarm,
    Fact,
    LatchSet,
    LatchClear,
    CountEach,
    CountSet,
    Rest,
    UsableWhile,
    Start,
    Assumption,
    Requirement,
}
