using Sequencer.Control.Execution;
using Sequencer.Control.Execution.Specialising;
using Sequencer.Control.TransitionSystems;
using Sequencer.Testing;

namespace Sequencer.Control.Tests.Execution;

/// <summary>What the stepper learns costs or spares instructions; results are compared with the interpreter's throughout.</summary>
public sealed class SpecialisingStepperTests
{
    private const int Parts = 8;

    /// <summary>A clock, and sums that grow by its time while their input says so.</summary>
    private static TransitionSystem Sums()
    {
        ExpressionBuilder builder = new();
        IntegerRange range = new(0, 100_000);
        IntegerRange most = new(0, 1_000_000_000_000);
        Variable clock = new("clock", VariableRole.State, 0, Sort.Integer, range);
        Expression time = builder.Variable(clock);
        List<Variable> inputs = [];
        List<StateVariable> states = [State(clock, Wrapped(builder.Add(time, builder.Constant(1)), range))];
        for (int part = 0; part < Parts; part++)
        {
            Variable input = new(FormattableString.Invariant($"in{part}"), VariableRole.Input, part, Sort.Boolean, IntegerRange.Boolean);
            Variable sum = new(FormattableString.Invariant($"sum{part}"), VariableRole.State, part + 1, Sort.Integer, most);
            Expression value = builder.Variable(sum);
            inputs.Add(input);
            states.Add(State(sum, builder.IfThenElse(builder.Variable(input), Wrapped(builder.Add(value, time), most), value)));
        }

        return TransitionSystem.Create("sums", 100, [.. inputs], [.. states], [], [], [], [], []);

        Expression Wrapped(Expression sum, IntegerRange within) => builder.IfThenElse(builder.Less(builder.Constant(within.Maximum), sum), builder.Constant(0), sum);

        static StateVariable State(Variable variable, Expression next) =>
            new(variable, 0, next, false, StatePurpose.Control, RandomSystem.Origin);
    }

    [Fact]
    public void What_moved_once_is_not_computed_for_ever()
    {
        TransitionSystem system = Sums();
        Interpreter plain = new(system, []);
        SpecialisingStepper specialising = new(system, []);
        Random random = new(1);
        Run(3000, () => random.Next(2));
        Array.Clear(plain.Inputs);
        Run(1000, null);
        double after = InstructionsEach(1000);
        Run(1 << 21, null);
        Assert.InRange(after, 10.0, 40.0);
        Assert.InRange(InstructionsEach(1000), 0.0, 0.5 * after);

        double InstructionsEach(int scans)
        {
            long before = specialising.ShortenedInstructions;
            Run(scans, null);
            return (specialising.ShortenedInstructions - before) / (double)scans;
        }

        void Run(int scans, Func<int>? draw)
        {
            for (int scan = 0; scan < scans; scan++)
            {
                for (int part = 0; draw is not null && part < Parts; part++)
                {
                    plain.Inputs[part] = draw();
                }

                plain.Inputs.CopyTo(specialising.Inputs, 0);
                plain.Step();
                specialising.Step();
                Assert.True(plain.States.SequenceEqual(specialising.States), $"scan {scan}");
            }
        }
    }

    /// <summary>An input that changes now and then leads to another situation, and is not computed with: with all of them moving a scan takes 28 instructions.</summary>
    [Fact]
    public void What_changes_rarely_is_taken_to_stay_however_long_the_run()
    {
        TransitionSystem system = Sums();
        SpecialisingStepper specialising = new(system, []);
        Random random = new(2);
        long before = 0;
        for (int scan = 0; scan < 1 << 21; scan++)
        {
            if (random.Next(3000) == 0)
            {
                specialising.Inputs[random.Next(Parts)] ^= 1;
            }

            specialising.Step();
            before = scan == 1 << 20 ? specialising.ShortenedInstructions : before;
        }

        double each = (specialising.ShortenedInstructions - before) / (double)(1 << 20);
        Assert.InRange(each, 1.0, 18.0);
        Assert.InRange(specialising.WholeScans, 1, (1 << 21) / 500);
    }

    /// <summary>Clocks of several steps, one of them backwards, each with limits at which something turns: only what turns is looked at.</summary>
    [Fact]
    public void Clocks_are_moved_on_without_instructions_until_one_is_due()
    {
        ExpressionBuilder builder = new();
        List<StateVariable> states = [];
        List<Expression> observed = [];
        for (int index = 0; index < Parts; index++)
        {
            long step = index == 3 ? -7 : 1 + index;
            Variable clock = new(FormattableString.Invariant($"clock{index}"), VariableRole.State, index, Sort.Integer, new IntegerRange(-1_000_000, 1_000_000));
            Expression time = builder.Variable(clock);
            Expression next = builder.Add(time, builder.Constant(step));
            Expression isDue = step > 0 ? builder.LessOrEqual(builder.Constant(300_011), next) : builder.Less(next, builder.Constant(-300_000));
            states.Add(new StateVariable(clock, 0, builder.IfThenElse(isDue, builder.Constant(0), next), false, StatePurpose.Control, RandomSystem.Origin));
            observed.Add(builder.Equal(time, builder.Constant(step * 1000)));
            observed.Add(builder.Less(builder.Scale(-3, time), builder.Constant(-12_345)));
        }

        TransitionSystem system = TransitionSystem.Create("clocks", 100, [], [.. states], [], [], [], [], []);
        Interpreter plain = new(system, [.. observed]);
        SpecialisingStepper specialising = new(system, [.. observed]);
        for (int scan = 0; scan < 300_000; scan++)
        {
            plain.Step();
            specialising.Step();
            Assert.True(plain.States.SequenceEqual(specialising.States), $"states of scan {scan}");
            Assert.True(plain.Observed.AsSpan().SequenceEqual(specialising.Observed), $"observed of scan {scan}");
        }

        Assert.InRange(specialising.ShortenedInstructions, 1, 300_000);
    }
}
