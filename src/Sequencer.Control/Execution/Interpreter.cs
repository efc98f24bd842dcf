using System.Collections.Immutable;
using Sequencer.Control.TransitionSystems;

namespace Sequencer.Control.Execution;

/// <summary>
/// Runs a system instruction by instruction: ready at once, so the choice for a short run; a long one
/// is worth a <see cref="CompiledStepper"/>.
/// </summary>
public sealed class Interpreter : Stepper
{
    private readonly InstructionList _code;
    private readonly long[] _registers;

    public Interpreter(TransitionSystem system)
        : this(system, [])
    {
    }

    public Interpreter(TransitionSystem system, ImmutableArray<Expression> observed)
        : base(system, observed)
    {
        _code = new InstructionList(system, observed);
        _registers = [.. _code.InitialRegisters];
    }

    public override void Step()
    {
        Inputs.CopyTo(_registers, 0);
        StateValues.CopyTo(_registers, Inputs.Length);
        InstructionExecution.Execute(_code.Runs, _code.Instructions, _registers);

        Gather(_code.Outputs, Outputs);
        Gather(_code.Observed, Observed);
        Gather(_code.NextStates, StateValues);
    }

    private void Gather(int[] places, long[] values)
    {
        for (int index = 0; index < places.Length; index++)
        {
            values[index] = _registers[places[index]];
        }
    }
}
