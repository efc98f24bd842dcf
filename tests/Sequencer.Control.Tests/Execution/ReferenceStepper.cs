using System.Collections.Immutable;
using Sequencer.Control.Execution;
using Sequencer.Control.TransitionSystems;

namespace Sequencer.Control.Tests.Execution;

/// <summary>A scan by the <see cref="ReferenceEvaluator"/>.</summary>
internal sealed class ReferenceStepper : Stepper
{
    public ReferenceStepper(TransitionSystem system, ImmutableArray<Expression> observed)
        : base(system, observed)
    {
    }

    public override void Step()
    {
        Dictionary<string, long> values = [];
        for (int index = 0; index < Inputs.Length; index++)
        {
            values.Add(System.Inputs[index].Name, Inputs[index]);
        }

        for (int index = 0; index < States.Length; index++)
        {
            values.Add(System.States[index].Variable.Name, States[index]);
        }

        ReferenceEvaluator evaluator = new(values);
        System.Outputs.Select(output => evaluator.Value(output.Value)).ToArray().CopyTo(Outputs, 0);
        ObservedExpressions.Select(evaluator.Value).ToArray().CopyTo(Observed, 0);
        System.States.Select(state => evaluator.Value(state.Next)).ToArray().CopyTo(StateValues, 0);
    }
}
