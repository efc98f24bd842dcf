using System.Diagnostics;
using Sequencer.Control.TransitionSystems;

namespace Sequencer.Control.Execution;

/// <summary>What each kind of instruction does to the registers.</summary>
internal static class InstructionExecution
{
    public static void Execute(InstructionRun[] runs, Instruction[] instructions, long[] registers)
    {
        foreach (InstructionRun run in runs)
        {
            Execute(run.Kind, instructions.AsSpan(run.Start..run.End), registers);
        }
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
}
