using System.Collections.Immutable;
using Sequencer.Language.Rules.Protections;
using Sequencer.Language.Rules.StepFlow;

namespace Sequencer.Language.Rules;

/// <summary>Every rule the checker runs, in no meaningful order: no rule leans on another.</summary>
internal static class ProgramRules
{
    public static ImmutableArray<IProgramRule> All { get; } =
    [
        new AlwaysTrueRule(),
        new ConflictingDrivesRule(),
        new DelayBeyondLimitRule(),
        new DoseEndsShortOfBandRule(),
        new EdgeOfConstantRule(),
        new FineBandTooWideRule(),
        new FinePulseNotFinerRule(),
        new JoinCanWaitForeverRule(),
        new JoinNeverOpenedRule(),
        new LimitBelowExpectedRule(),
        new LimitBelowFillRule(),
        new LimitBelowFirstPulseRule(),
        new LimitBelowNoResponseRule(),
        new LimitBelowOtherBranchRule(),
        new LimitBelowStaysRule(),
        new LimitLeadsBackRule(),
        new LimitOnlyAlarmsRule(),
        new LoopWithoutEndRule(),
        new MaximumBelowPulseRule(),
        new MaximumOutOfReachRule(),
        new NeverTrueRule(),
        new StaysBelowScanRule(),
        new StepEnteredTwiceRule(),
        new StepLeftOnlyByLimitRule(),
        new StepWithoutExitRule(),
        new UnreachableAlternativeRule(),
        new UnreachableStepRule(),
        new WaitBelowScanRule(),
        new BlockForcesOnRule(),
        new CommandTakenAsProofRule(),
        new DelayBeyondReactionRule(),
        new DiscrepancyBelowScanRule(),
        new DosingAtRestRule(),
        new DosingWithoutInterlockRule(),
        new DosingWithoutMixingRule(),
        new EmergencyStopWithoutTripRule(),
        new GroupWithoutMemberRule(),
        new InputNeverReadRule(),
        new LatchNeverReadRule(),
        new LatchNeverSetsRule(),
        new NeedsOwnProofRule(),
        new NormallyOpenLimitSwitchRule(),
        new NothingDrivesInterlockRule(),
        new OpposingReagentsNotExclusiveRule(),
        new OutputNeverOnRule(),
        new ParameterNeverReadRule(),
        new PermissiveAloneRule(),
        new ReagentNeverDeliveredRule(),
        new ReleaseBandTooNarrowRule(),
        new ReleaseOverlapsCauseRule(),
        new RequirementUntouchedRule(),
        new RestWithoutIfBadRule(),
        new ThresholdWithoutBandRule(),
        new TripBadSignalUnsaidRule(),
        new TripOnlyAlarmsRule(),
    ];
}
