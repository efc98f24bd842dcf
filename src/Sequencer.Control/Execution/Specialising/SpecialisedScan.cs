namespace Sequencer.Control.Execution.Specialising;

/// <summary>
/// What is left of a scan's code in one situation, where some of the leaves that move rest and some comparisons have their known
/// outcomes: moving values are computed, the outcomes are checked, and all other results are known beforehand.
/// </summary>
internal sealed class SpecialisedScan(long[] registers)
{
    public required InstructionRun[] Runs { get; init; }

    public required Instruction[] Instructions { get; init; }

    public required Move[] FromInputs { get; init; }

    public required Move[] FromStates { get; init; }

    /// <summary>States that could move, and have a value here that the scan leaves to them.</summary>
    public required KnownValues Resting { get; init; }

    public required ExpectedOutcome[] Expected { get; init; }

    public required ScanResults NextStates { get; init; }

    public required ScanResults Outputs { get; init; }

    public required ScanResults Observed { get; init; }

    /// <summary>The situation after the scan is another one for certain.</summary>
    public required bool ChangesSituation { get; init; }

    /// <summary>The states of the situation that are computed.</summary>
    public required int[] MayChangeSituation { get; init; }

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
    /// <param name="again">Whether the scan before was this one too: what is known is there already.</param>
    /// <returns>Where it is not as expected, and in what.</returns>
    public Miss? Step(Stepper stepper, long[] states, bool again)
    {
        if (!again && Resting.FirstDifference(states) is var different && different >= 0)
        {
            return new Miss(different, IsState: true);
        }

        long[] inputs = stepper.Inputs;
        foreach (ref readonly Move move in FromInputs.AsSpan())
        {
            registers[move.To] = inputs[move.From];
        }

        foreach (ref readonly Move move in FromStates.AsSpan())
        {
            registers[move.To] = states[move.From];
        }

        InstructionExecution.Execute(Runs, Instructions, registers);
        foreach (ref readonly ExpectedOutcome expected in Expected.AsSpan())
        {
            if (registers[expected.Register] != expected.Value)
            {
                return new Miss(expected.Instruction, IsState: false);
            }
        }

        NextStates.Write(states, registers, again);
        Outputs.Write(stepper.Outputs, registers, again);
        Observed.Write(stepper.Observed, registers, again);
        return null;
    }
}
