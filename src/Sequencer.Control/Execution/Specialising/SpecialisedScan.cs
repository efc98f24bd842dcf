namespace Sequencer.Control.Execution.Specialising;

/// <summary>
/// What is left of a scan's code in one situation, where some of the leaves that move rest and some comparisons have their known
/// outcomes: moving values are computed, the outcomes are checked, and all other results are known beforehand. When it is done again
/// and again, clocks are only moved on until the first comparison of theirs is due.
/// </summary>
internal sealed class SpecialisedScan
{
    private readonly long[] _registers;
    private readonly ScanPart _whole;
    private readonly ScanPart _steady;
    private readonly Clock[] _clocks;
    private readonly Deadline[] _deadlines;
    private long _steadyScans;

    public SpecialisedScan(long[] registers, ScanPart whole, KnownValues nextStates)
    {
        (_registers, _whole, NextStates) = (registers, whole, nextStates);
        (_steady, _clocks, _deadlines) = SteadyPart.Of(whole, nextStates.Places, registers);
    }

    /// <summary>States that could move, and have a value here that the scan leaves to them.</summary>
    public required KnownValues Resting { get; init; }

    public KnownValues NextStates { get; }

    public required KnownValues Outputs { get; init; }

    public required KnownValues Observed { get; init; }

    /// <summary>The situation after the scan is another one for certain.</summary>
    public required bool ChangesSituation { get; init; }

    /// <summary>The states of the situation that are computed.</summary>
    public required int[] MayChangeSituation { get; init; }

    /// <summary>The places of the observed values that are computed.</summary>
    public IEnumerable<int> ComputedObserved => _whole.Observed.Select(move => move.To);

    /// <summary>How many instructions the last step took.</summary>
    public int Instructions { get; private set; }

    /// <summary>Whether the situation after the scan is the one before it.</summary>
    /// <param name="states">After the scan.</param>
    /// <param name="before">The states of the situation.</param>
    public bool Keeps(long[] states, ReadOnlySpan<long> before)
    {
        foreach (int place in MayChangeSituation)
        {
            if (states[place] != before[place])
            {
                return false;
            }
        }

        return !ChangesSituation;
    }

    /// <summary>Does the scan if all is as expected; else nothing has changed. The situation must be this scan's.</summary>
    /// <param name="stepper">What is stepped.</param>
    /// <param name="states">Its states.</param>
    /// <param name="again">Whether the scan before was this one too: what is known is there already, and clocks run on.</param>
    /// <returns>Where it is not as expected, and in what.</returns>
    public Miss? Step(Stepper stepper, long[] states, bool again)
    {
        if (!again && Resting.FirstDifference(states) is var different && different >= 0)
        {
            return new Miss(different, IsState: true);
        }

        bool isSteady = again && _steadyScans > 0;
        ScanPart part = isSteady ? _steady : _whole;
        if (part.Execute(stepper.Inputs, states, _registers) is { } miss)
        {
            return miss;
        }

        Instructions = part.Instructions.Length;
        if (!again)
        {
            NextStates.Write(states);
            Outputs.Write(stepper.Outputs);
            Observed.Write(stepper.Observed);
        }

        part.Write(stepper, states, _registers);
        if (isSteady)
        {
            _steadyScans--;
            foreach (ref readonly Clock clock in _clocks.AsSpan())
            {
                states[clock.State] += clock.Step;
            }
        }
        else
        {
            _steadyScans = SteadyScans() - 1;
        }

        return null;
    }

    /// <summary>How many scans from this one on no comparison of clocks is due.</summary>
    private long SteadyScans()
    {
        long scans = long.MaxValue;
        foreach (ref readonly Deadline deadline in _deadlines.AsSpan())
        {
            scans = Math.Min(scans, deadline.Scans(_registers));
        }

        return scans;
    }
}
