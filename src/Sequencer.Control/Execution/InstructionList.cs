using System.Collections.Immutable;
using System.Diagnostics;
using Sequencer.Control.TransitionSystems;

namespace Sequencer.Control.Execution;

/// <summary>
/// A system as straight-line code over registers: the inputs, then the states, then constants and
/// intermediate values. Only what an output, an observed expression or a next state needs is there.
/// </summary>
internal sealed class InstructionList
{
    private readonly Dictionary<Expression, int> _places = [];
    private readonly List<Instruction> _instructions = [];
    private readonly List<long> _registers = [];

    public InstructionList(TransitionSystem system, ImmutableArray<Expression> observed)
    {
        _registers.AddRange(Enumerable.Repeat(0L, system.Inputs.Length + system.States.Length));
        foreach (Expression expression in ExpressionGraph.InOrder(ScanRoots.Of(system, observed)))
        {
            _places[expression] = Place(expression, system.Inputs.Length);
        }

        InstructionSchedule schedule = new(_instructions, _registers.Count);
        Instructions = schedule.Ordered;
        Runs = schedule.Runs;
        InitialRegisters = [.. _registers];
        Outputs = [.. system.Outputs.Select(output => _places[output.Value])];
        Observed = [.. observed.Select(expression => _places[expression])];
        NextStates = [.. system.States.Select(state => _places[state.Next])];
    }

    public Instruction[] Instructions { get; }

    /// <summary>All of the instructions, in parts of one kind each.</summary>
    public InstructionRun[] Runs { get; }

    public ImmutableArray<long> InitialRegisters { get; }

    /// <summary>The register of each output's value.</summary>
    public int[] Outputs { get; }

    /// <summary>The register of each observed expression's value.</summary>
    public int[] Observed { get; }

    /// <summary>The register of each state's next value.</summary>
    public int[] NextStates { get; }

    /// <summary>A whole scan, its inputs and states being in the registers; its results go into the other arrays.</summary>
    public void Execute(long[] registers, long[] outputs, long[] observed, long[] nextStates)
    {
        InstructionExecution.Execute(Runs, Instructions, registers);
        Gather(registers, Outputs, outputs);
        Gather(registers, Observed, observed);
        Gather(registers, NextStates, nextStates);
    }

    private static void Gather(long[] registers, int[] places, long[] values)
    {
        for (int index = 0; index < places.Length; index++)
        {
            values[index] = registers[places[index]];
        }
    }

    private int Place(Expression expression, int inputs)
    {
        switch (expression.Kind)
        {
            case ExpressionKind.Variable:
                Variable variable = expression.Variable ?? throw new UnreachableException("a variable expression without its variable");
                return variable.Role == VariableRole.Input ? variable.Index : inputs + variable.Index;
            case ExpressionKind.Constant:
                return NewRegister(expression.Value);
            case ExpressionKind.Scale:
                return Emit(ExpressionKind.Scale, _places[expression.Operands[0]], NewRegister(expression.Value), 0);
            case ExpressionKind.IfThenElse:
                return Emit(ExpressionKind.IfThenElse, _places[expression.Operands[0]], _places[expression.Operands[1]], _places[expression.Operands[2]]);
            case ExpressionKind.Not:
                return Emit(ExpressionKind.Not, _places[expression.Operands[0]], 0, 0);
            default:
                return Tree(expression.Kind, expression.Operands.AsSpan());
        }
    }

    /// <summary>Halves of halves, so that few wait for one another.</summary>
    private int Tree(ExpressionKind kind, ReadOnlySpan<Expression> operands) => operands.Length == 1
        ? _places[operands[0]]
        : Emit(kind, Tree(kind, operands[..(operands.Length / 2)]), Tree(kind, operands[(operands.Length / 2)..]), 0);

    private int Emit(ExpressionKind kind, int first, int second, int third)
    {
        int target = NewRegister(0);
        _instructions.Add(new Instruction(kind, target, first, second, third));
        return target;
    }

    private int NewRegister(long value)
    {
        _registers.Add(value);
        return _registers.Count - 1;
    }
}
