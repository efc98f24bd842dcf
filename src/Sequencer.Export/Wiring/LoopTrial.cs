using System.Collections.Immutable;
using Sequencer.Control.Execution;
using Sequencer.Control.Signals;
using Sequencer.Control.TransitionSystems;

namespace Sequencer.Export.Wiring;

/// <summary>Tries what a text makes of a loop's current with every current that the word can hold.</summary>
internal static class LoopTrial
{
    /// <summary>What a word of 16 bits holds.</summary>
    public const int Counts = 65_536;

    /// <summary>The first current at which a reading is not the nearest; null where all are.</summary>
    /// <param name="builder">Of the expression.</param>
    /// <param name="reading">An expression of the current alone.</param>
    /// <param name="current">The word.</param>
    /// <param name="range">The reading at 4 and at 20 mA.</param>
    public static (long Microamperes, long Reads)? Reading(ExpressionBuilder builder, Expression reading, Variable current, IntegerRange range)
    {
        Stepper trial = Trial(builder, [reading], [current]);
        for (long count = current.Range.Minimum; count <= current.Range.Maximum; count++)
        {
            trial.Inputs[0] = count;
            trial.Step();
            if (trial.Observed[0] != LoopCurrent.Reading(count, range))
            {
                return (count, trial.Observed[0]);
            }
        }

        return null;
    }

    /// <summary>The first current at which the loop's failure is judged otherwise than by NAMUR NE 43; null where there is none.</summary>
    /// <param name="builder">Of the expressions.</param>
    /// <param name="failed">What the block is handed, and what is kept of it: of the current, what was kept, and the return of power.</param>
    /// <param name="current">The word.</param>
    /// <param name="before">What is kept from the scan before; a loop is failed at first and after a loss of power.</param>
    /// <param name="power">The input that says that power has returned.</param>
    public static (long Microamperes, bool Before, bool Reads)? Failure(
        ExpressionBuilder builder, ImmutableArray<Expression> failed, Variable current, Variable? before, Variable power)
    {
        Stepper trial = Trial(builder, failed, before is null ? [current, power] : [current, power, before]);
        for (int choice = 0; choice < (before is null ? 2 : 4); choice++)
        {
            bool returned = (choice & 1) == 1;
            bool kept = choice > 1;
            trial.Inputs[1] = returned ? 1 : 0;
            if (before is not null)
            {
                trial.Inputs[2] = kept ? 1 : 0;
            }

            for (long count = current.Range.Minimum; count <= current.Range.Maximum; count++)
            {
                trial.Inputs[0] = count;
                trial.Step();
                bool expected = LoopCurrent.HasFailed(count, returned || kept);
                if (trial.Observed.AsSpan().ContainsAnyExcept(expected ? 1L : 0L))
                {
                    return (count, returned || kept, !expected);
                }
            }
        }

        return null;
    }

    private static CompiledStepper Trial(ExpressionBuilder builder, ImmutableArray<Expression> values, ImmutableArray<Variable> variables)
    {
        ImmutableArray<Variable> inputs = [.. variables.Select((variable, index) => variable with { Role = VariableRole.Input, Index = index })];
        Dictionary<Variable, Expression> images = variables.Zip(inputs).ToDictionary(pair => pair.First, pair => builder.Variable(pair.Second));
        return new CompiledStepper(TransitionSystem.Create("loop", 1, inputs, [], [], [], [], [], []), [.. builder.Substitute(values, images)]);
    }
}
