using System.Collections.Immutable;
using Sequencer.Control.Execution;
using Sequencer.Control.Execution.Specialising;
using Sequencer.Control.TransitionSystems;
using Sequencer.Testing;

namespace Sequencer.Control.Tests.Execution;

public sealed class StepperAgreementTests
{
    [Fact]
    public void Interpreter_and_compiled_stepper_agree_on_2000_random_systems_of_5000_scans()
    {
        Dictionary<ExpressionKind, int> hits = Enum.GetValues<ExpressionKind>().ToDictionary(kind => kind, _ => 0);
        for (int seed = 0; seed < 2000; seed++)
        {
            TransitionSystem system = RandomSystem.Create(seed);
            ImmutableArray<Expression> observed = Observed(system);
            Agree(seed, 5000, new Interpreter(system, observed), new CompiledStepper(system, observed));
            foreach (Expression expression in ExpressionGraph.InOrder(Roots(system)))
            {
                hits[expression.Kind]++;
            }
        }

        Assert.All(hits, hit => Assert.True(hit.Value >= 2000, $"{hit.Key} was executed in {hit.Value} places only"));
    }

    [Fact]
    public void Both_steppers_agree_with_the_recursive_reference()
    {
        for (int seed = 10_000; seed < 10_150; seed++)
        {
            TransitionSystem system = RandomSystem.Create(seed);
            ImmutableArray<Expression> observed = Observed(system);
            Agree(seed, 60, new ReferenceStepper(system, observed), new CompiledStepper(system, observed));
            Agree(seed, 60, new ReferenceStepper(system, observed), new Interpreter(system, observed));
        }
    }

    [Fact]
    public void A_system_cut_into_many_pieces_of_code_agrees_too()
    {
        for (int seed = 20_000; seed < 20_004; seed++)
        {
            TransitionSystem system = RandomSystem.Create(seed, states: 1200);
            CompiledSystem compiled = CompiledSystem.Compile(system, Observed(system));
            Assert.True(compiled.Pieces.Length > 2, $"only {compiled.Pieces.Length} pieces");
            Agree(seed, 200, new Interpreter(system, Observed(system)), new CompiledStepper(compiled));
        }
    }

    [Fact]
    public void A_specialising_stepper_agrees_on_1000_random_systems_whose_inputs_stand_still_for_a_while()
    {
        long whole = 0;
        long scans = 0;
        for (int seed = 30_000; seed < 31_000; seed++)
        {
            TransitionSystem system = RandomSystem.Create(seed);
            ImmutableArray<Expression> observed = Observed(system);
            SpecialisingStepper specialising = new(system, observed);
            AgreeWhereInputsRest(seed, 1000, new Interpreter(system, observed), specialising);
            whole += specialising.WholeScans;
            scans += 1000;
        }

        Assert.InRange(whole, 1, scans / 2);
    }

    [Fact]
    public void A_specialising_stepper_agrees_on_large_random_systems()
    {
        for (int seed = 40_000; seed < 40_010; seed++)
        {
            TransitionSystem system = RandomSystem.Create(seed, states: 600);
            AgreeWhereInputsRest(seed, 1500, new Interpreter(system, Observed(system)), new SpecialisingStepper(system, Observed(system)));
        }
    }

    [Fact]
    public void A_specialising_stepper_sees_states_that_are_set_from_outside()
    {
        for (int seed = 50_000; seed < 50_100; seed++)
        {
            TransitionSystem system = RandomSystem.Create(seed);
            Random random = new(seed);
            (Interpreter plain, SpecialisingStepper specialising) = (new Interpreter(system, []), new SpecialisingStepper(system, []));
            for (int round = 0; round < 20; round++)
            {
                AgreeWhereInputsRest(seed + round, 20, plain, specialising);
                foreach (Variable state in system.States.Select(state => state.Variable).Where(_ => random.Next(8) == 0))
                {
                    plain.SetState(state.Index, random.NextInt64(state.Range.Minimum, state.Range.Maximum + 1));
                    specialising.SetState(state.Index, plain.States[state.Index]);
                }
            }
        }
    }

    [Fact]
    public void Initialise_takes_a_stepper_back_to_the_start()
    {
        TransitionSystem system = RandomSystem.Create(5);
        CompiledStepper stepper = new(system, []);
        long[] before = [.. stepper.States];
        stepper.SetStates([.. before.Select(_ => 1L)]);
        stepper.Step();
        stepper.Initialise();
        Assert.Equal(before, stepper.States);
        Assert.Equal([.. system.States.Select(state => state.Initial)], before);
    }

    private static ImmutableArray<Expression> Observed(TransitionSystem system) =>
    [
        .. system.Requirements.Select(requirement => requirement.Holds),
        .. system.Assumptions.Select(assumption => assumption.Holds),
        .. system.Definitions.Select(definition => definition.Value),
        .. system.Alarms.Select(alarm => alarm.Raised),
    ];

    private static IEnumerable<Expression> Roots(TransitionSystem system) =>
        [.. Observed(system), .. system.States.Select(state => state.Next), .. system.Outputs.Select(output => output.Value)];

    /// <summary>Each input keeps its value in most scans, and a number wanders by a little in others.</summary>
    private static void AgreeWhereInputsRest(int seed, int scans, Stepper left, Stepper right)
    {
        Random random = new(seed);
        RandomSystem.FillInputs(left.System, random, left.Inputs);
        for (int scan = 0; scan < scans; scan++)
        {
            foreach (Variable input in left.System.Inputs)
            {
                left.Inputs[input.Index] = random.Next(100) switch
                {
                    0 => random.NextInt64(input.Range.Minimum, input.Range.Maximum + 1),
                    < 40 => Math.Clamp(left.Inputs[input.Index] + random.Next(-1, 2), input.Range.Minimum, input.Range.Maximum),
                    _ => left.Inputs[input.Index],
                };
            }

            DemandSameScan(seed, scan, left, right);
        }
    }

    private static void Agree(int seed, int scans, Stepper left, Stepper right)
    {
        Random random = new(seed);
        for (int scan = 0; scan < scans; scan++)
        {
            RandomSystem.FillInputs(left.System, random, left.Inputs);
            DemandSameScan(seed, scan, left, right);
        }
    }

    private static void DemandSameScan(int seed, int scan, Stepper left, Stepper right)
    {
        left.Inputs.CopyTo(right.Inputs, 0);
        left.Step();
        right.Step();
        bool same = left.States.SequenceEqual(right.States)
            && left.Outputs.AsSpan().SequenceEqual(right.Outputs)
            && left.Observed.AsSpan().SequenceEqual(right.Observed);
        Assert.True(same, $"seed {seed}: {left.GetType().Name} and {right.GetType().Name} part in scan {scan}");
    }
}
