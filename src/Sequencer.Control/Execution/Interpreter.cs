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
        _code.Execute(_registers, Outputs, Observed, StateValues);
    }
}
