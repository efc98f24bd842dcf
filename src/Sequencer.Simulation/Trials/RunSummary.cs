using System.Collections.Immutable;

namespace Sequencer.Simulation.Trials;

/// <summary>What is kept of one run of a set: as much for a long run as for a short one.</summary>
/// <param name="End">what ended it</param>
/// <param name="Seconds">how long it was</param>
/// <param name="BatchSeconds">when what the scenario waits for came; not a number where it did not</param>
/// <param name="Values">as <see cref="TrialMeasures.Values"/></param>
/// <param name="Overflowed">litres over each of <see cref="TrialMeasures.Rims"/></param>
/// <param name="Leaked">litres out of all tanks with a hole</param>
/// <param name="Expectations">whether each expectation of the scenario came true</param>
/// <param name="FirstAlarm">the first alarm after the fault that the run without it does not raise</param>
/// <param name="Reaction">the unit that first left its steps after the fault, and into what</param>
/// <param name="RestSeconds">when that unit was held, stopped or aborted; not a number where it never was</param>
/// <param name="Broken">the first requirement that did not hold</param>
/// <param name="Overdosed">the output through which most litres went beyond the program's limit, and how many</param>
/// <param name="Final">the state of each unit at the end</param>
/// <param name="IsAtRest">a unit is held, stopped or aborted at the end: it waits for a person</param>
/// <param name="Asking">a prompt that is still asked at the end; "" for none</param>
/// <param name="Unbalanced">of volume and of all substances the most that is not accounted for, as a fraction of the throughput</param>
/// <param name="Failure">why the plant model stopped; "" where it did not</param>
public sealed record RunSummary(
    RunEndKind End,
    double Seconds,
    double BatchSeconds,
    ImmutableArray<double> Values,
    ImmutableArray<double> Overflowed,
    double Leaked,
    ImmutableArray<bool> Expectations,
    Happening? FirstAlarm,
    Happening? Reaction,
    double RestSeconds,
    Happening? Broken,
    Overdose? Overdosed,
    string Final,
    bool IsAtRest,
    string Asking,
    double Unbalanced,
    string Failure)
{
    /// <summary>A run that could not be begun.</summary>
    public static RunSummary NotPlayable(TrialMeasures measures) => new(
        RunEndKind.NotPlayable,
        0,
        double.NaN,
        [.. measures.Values.Select(_ => double.NaN)],
        [.. measures.Rims.Select(_ => 0.0)],
        0.0,
        [],
        null,
        null,
        double.NaN,
        null,
        null,
        "",
        false,
        "",
        0.0,
        "");

    public double OverflowedInAll => Overflowed.Sum();
}
