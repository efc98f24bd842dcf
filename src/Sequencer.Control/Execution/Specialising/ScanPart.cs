namespace Sequencer.Control.Execution.Specialising;

/// <summary>Instructions of a specialised scan, with what they take from the leaves, what is checked of their outcomes and where their results go.</summary>
internal sealed record ScanPart(
    Instruction[] Instructions,
    InstructionRun[] Runs,
    Move[] FromInputs,
    Move[] FromStates,
    Guard[] Guards,
    ExpectedOutcome[] Expected,
    Move[] NextStates,
    Move[] Outputs,
    Move[] Observed)
{
    /// <summary>Executes it; the first outcome that is not as expected, null where all are.</summary>
    public Miss? Execute(long[] inputs, long[] states, long[] registers)
    {
        foreach (ref readonly Move move in FromInputs.AsSpan())
        {
            registers[move.To] = inputs[move.From];
        }

        foreach (ref readonly Move move in FromStates.AsSpan())
        {
            registers[move.To] = states[move.From];
        }

        foreach (ref readonly Guard guard in Guards.AsSpan())
        {
            long value = registers[guard.Register];
            if (value < guard.Minimum || value > guard.Maximum)
            {
                return new Miss(value < guard.Minimum ? guard.BelowMinimum : guard.AboveMaximum, IsState: false);
            }
        }

        InstructionExecution.Execute(Runs, Instructions, registers);
        foreach (ref readonly ExpectedOutcome expected in Expected.AsSpan())
        {
            if (registers[expected.Register] != expected.Value)
            {
                return new Miss(expected.Instruction, IsState: false);
            }
        }

        return null;
    }

    /// <summary>The computed results of what was executed.</summary>
    public void Write(Stepper stepper, long[] states, long[] registers)
    {
        Write(NextStates, states, registers);
        Write(Outputs, stepper.Outputs, registers);
        Write(Observed, stepper.Observed, registers);
    }

    private static void Write(Move[] computed, long[] results, long[] registers)
    {
        foreach (ref readonly Move move in computed.AsSpan())
        {
            results[move.To] = registers[move.From];
        }
    }
}
