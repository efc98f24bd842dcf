using Sequencer.Language.Programs;
using Sequencer.Language.Rules.Analysis;
using Sequencer.Language.Units;

namespace Sequencer.Language.Rules.StepFlow;

/// <summary>A way at a level (or another reading) that cannot be met in time from the lower end of the range at the fastest rise assumed.</summary>
internal sealed class LimitBelowFillRule : IProgramRule
{
    public void Check(UnitProgram program, RuleContext context)
    {
        Dictionary<string, AssumedRate> rates = new(StringComparer.Ordinal);
        foreach (AssumedRate rate in program.Assumptions.Select(assumption => assumption.Fact).OfType<AssumedRate>())
        {
            if (rate.Rises && rate.PerSecond.Sign > 0)
            {
                rates.TryAdd(rate.Input.Tag, rate);
            }
        }

        ILookup<int, Step> steps = program.Steps.ToLookup(step => step.Number);
        foreach (Transition way in program.Transitions)
        {
            if (ReadingThreshold.Of(way.When) is { Above: true } threshold && rates.TryGetValue(threshold.Input.Tag, out AssumedRate? rate))
            {
                Rational seconds = (threshold.High - (threshold.Input.Resolution * threshold.Input.Minimum)) / rate.PerSecond;
                foreach (Step step in way.From.SelectMany(number => steps[number]))
                {
                    Report(way, step, rate, seconds, context);
                }
            }
        }
    }

    private static void Report(Transition way, Step step, AssumedRate rate, Rational seconds, RuleContext context)
    {
        if (seconds * 1000 > step.Limit.Time.Milliseconds)
        {
            string perMinute = Wording.Amount(rate.PerSecond * 60, rate.Input.Unit) + "/min";
            context.Report(FlowDiagnostics.LimitBelowFill(way, step, perMinute, new Duration((long)seconds.Ceiling() * 1000)));
        }
    }
}
