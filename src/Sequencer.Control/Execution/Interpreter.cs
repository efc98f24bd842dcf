using System.Collections.Immutable;
using System.Diagnostics;
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
        States.CopyTo(_registers, Inputs.Length);
        foreach (InstructionRun run in _code.Runs)
        {
            Execute(run.Kind, _code.Instructions.AsSpan(run.Start..run.End), _registers);
        }

        Gather(_code.Outputs, Outputs);
        Gather(_code.Observed, Observed);
        Gather(_code.NextStates, States);
    }

    private static void Execute(ExpressionKind kind, ReadOnlySpan<Instruction> instructions, long[] registers)
    {
        switch (kind)
        {
            case ExpressionKind.Not:
                foreach (ref readonly Instruction one in instructions)
                {
                    registers[one.Target] = registers[one.First] ^ 1;
                }

                break;
            case ExpressionKind.And:
                foreach (ref readonly Instruction one in instructions)
                {
                    registers[one.Target] = registers[one.First] & registers[one.Second];
                }

                break;
            case ExpressionKind.Or:
                foreach (ref readonly Instruction one in instructions)
                {
                    registers[one.Target] = registers[one.First] | registers[one.Second];
                }

                break;
            case ExpressionKind.Equal:
                foreach (ref readonly Instruction one in instructions)
                {
                    registers[one.Target] = registers[one.First] == registers[one.Second] ? 1 : 0;
                }

                break;
            case ExpressionKind.Less:
                foreach (ref readonly Instruction one in instructions)
                {
                    registers[one.Target] = registers[one.First] < registers[one.Second] ? 1 : 0;
                }

                break;
            case ExpressionKind.LessOrEqual:
                foreach (ref readonly Instruction one in instructions)
                {
                    registers[one.Target] = registers[one.First] <= registers[one.Second] ? 1 : 0;
                }

                break;
            case ExpressionKind.Add:
                foreach (ref readonly Instruction one in instructions)
                {
                    registers[one.Target] = registers[one.First] + registers[one.Second];
                }

                break;
            case ExpressionKind.Scale:
                foreach (ref readonly Instruction one in instructions)
                {
                    registers[one.Target] = registers[one.First] * registers[one.Second];
                }

                break;
            case ExpressionKind.IfThenElse:
                foreach (ref readonly Instruction one in instructions)
                {
                    registers[one.Target] = registers[one.First] != 0 ? registers[one.Second] : registers[one.Third];
                }

                break;
            default:
                throw new UnreachableException($"no execution of {kind}");
        }
    }

    private void Gather(int[] places, long[] values)
    {
        for (int index = 0; index < places.Length; index++)
        {
            values[index] = _registers[places[index]];
        }
    }
}
