using System.Collections.Immutable;
using Sequencer.Control.TransitionSystems;
using Sequencer.Proof.Certificates;
using Sequencer.Testing;

namespace Sequencer.Benchmarks;

/// <summary>A certificate whose invariant reads every state of 40 units; outside solvers are the comparison.</summary>
internal sealed class CertificateBenchmark : Benchmark
{
    private const int Units = 10;

    public override string Name => "certificate";

    public override IEnumerable<Figure> Run()
    {
        TransitionSystem system = BatchPlant.Create(Units);
        Requirement requirement = system.Requirements[0];
        Expression invariant = Invariant(system);
        string text = CertificateWriter.Write(system, requirement, invariant);
        yield return new Figure("states", system.States.Length, string.Empty);
        yield return new Figure("text", text.Length / 1000.0, "kB");
        yield return new Figure("writing", Median.Milliseconds(() => CertificateWriter.Write(system, requirement, invariant)), "ms");
        yield return new Figure("checking", Median.Milliseconds(() => Demand(CertificateChecker.Check(system, requirement, text).Reason)), "ms");
        foreach (SmtSolver solver in (SmtSolver[])[SmtSolver.Z3, SmtSolver.Cvc5])
        {
            ImmutableArray<string> answers = [];
            double time = Median.Milliseconds(() => answers = [.. solver.Answers(text)]);
            yield return new Figure($"{solver} ({string.Join(' ', answers)})", time, "ms");
        }
    }

    /// <summary>A clock runs only in an active step, at most one step is active next to another, and no clock passes its end.</summary>
    private static Expression Invariant(TransitionSystem system)
    {
        ExpressionBuilder builder = new();
        int perUnit = system.States.Length / Units;
        List<Expression> facts = [];
        for (int unit = 0; unit < Units; unit++)
        {
            ImmutableArray<Expression> states = [.. system.States.Skip(unit * perUnit).Take(perUnit).Select(state => builder.Variable(state.Variable))];
            for (int step = 0; step < BatchPlant.Steps; step++)
            {
                Expression clock = states[BatchPlant.Steps + step];
                facts.Add(builder.Or(states[step], builder.Equal(clock, builder.Constant(0L))));
                facts.AddRange(Enumerable.Range(0, step).Select(other => builder.Not(builder.And(states[step], states[other]))));
            }
        }

        return builder.And(facts);
    }

    private static void Demand(string reason)
    {
        if (reason.Length > 0)
        {
            throw new InvalidOperationException(reason);
        }
    }
}
