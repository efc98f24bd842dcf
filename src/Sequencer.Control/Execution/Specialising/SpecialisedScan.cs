namespace Sequencer.Control.Execution.Specialising;

/// <summary>
/// What is left of a scan's code where all leaves that stand still have known values and some
/// comparisons their known outcomes: moving values are computed, the outcomes are checked, and all
/// other results are known beforehand.
/// </summary>
internal sealed class SpecialisedScan
{
    private readonly long[] _registers;

    public SpecialisedScan(long[] registers)
    {
        _registers = registers;
    }

    public required InstructionRun[] Runs { get; init; }

    public required Instruction[] Instructions { get; init; }

    public required Move[] FromInputs { get; init; }

    public required Move[] FromStates { get; init; }

    public required ExpectedOutcome[] Expected { get; init; }

    public required ScanResults NextStates { get; init; }

    public required ScanResults Outputs { get; init; }

    public required ScanResults Observed { get; init; }

    /// <summary>
    /// Does the scan if all outcomes are as expected; else nothing has changed. The leaves that stand
    /// still must have the values of this scan.
    /// </summary>
    /// <param name="stepper">What is stepped.</param>
    /// <param name="again">Whether the scan before was this one too: the known results are there already.</param>
    /// <param name="missed">The instruction whose outcome differed, in the whole list.</param>
    public bool TryStep(Stepper stepper, bool again, out int missed)
    {
        long[] registers = _registers;
        long[] inputs = stepper.Inputs;
        long[] states = stepper.States;
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
                missed = expected.Instruction;
                return false;
            }
        }

        missed = -1;
        NextStates.Write(states, registers, again);
        Outputs.Write(stepper.Outputs, registers, again);
        Observed.Write(stepper.Observed, registers, again);
        return true;
    }
}
