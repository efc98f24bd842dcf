using Sequencer.Plant.Response;

namespace Sequencer.Plant.Tests.Response;

/// <summary>Records made from a known dead time and lag, with noise: both must be found within what is said of how sure they are.</summary>
public sealed class PulseFitTests
{
    [Theory]
    [InlineData(5, 10, 2.0)]
    [InlineData(17, 20, 5.0)]
    [InlineData(30, 45, 5.0)]
    [InlineData(0, 8, 1.0)]
    public void Dead_time_and_lag_are_found(double deadTime, double lag, double sampleSeconds)
    {
        PulseShape shape = new(deadTime, lag);
        Pulse[] pulses = [.. Enumerable.Range(0, 10).Select(index => new Pulse(100.0 + (index * 110.0), 8.0))];
        PulseResponse found = Fit(shape, pulses, sampleSeconds, 0.01, [])!;
        Assert.InRange(found.Shape.DeadTimeSeconds, deadTime - Math.Max(1.5, 4.0 * found.DeadTimeSeconds.StandardError), deadTime + Math.Max(1.5, 4.0 * found.DeadTimeSeconds.StandardError));
        Assert.InRange(found.Shape.LagSeconds, lag - Math.Max(1.5, 4.0 * found.LagSeconds.StandardError), lag + Math.Max(1.5, 4.0 * found.LagSeconds.StandardError));
        Assert.InRange(found.Noise, 0.008, 0.012);
        Assert.InRange(found.DeadTimeSeconds.StandardError + found.LagSeconds.StandardError, 0.01, 6.0);
        Assert.All(found.Changes, change => Assert.InRange(change.Value, 0.22, 0.28));
        Assert.All(found.Changes, change => Assert.InRange(change.StandardError, 0.0003, 0.03));
        Assert.All(found.Changes, change => Assert.InRange(Math.Abs(change.Value - 0.25), 0.0, 4.5 * change.StandardError));
        Assert.True(found.WaitSeconds.IsDetermined && found.LagSeconds.IsDetermined);
        double wait = shape.SecondsToShow(0.95, 8.0);
        Assert.InRange(found.WaitSeconds.Value, wait - Math.Max(1.5, 4.0 * found.WaitSeconds.StandardError), wait + Math.Max(1.5, 4.0 * found.WaitSeconds.StandardError));
    }

    [Fact]
    public void A_reading_that_does_not_answer_determines_nothing()
    {
        Pulse[] pulses = [.. Enumerable.Range(0, 10).Select(index => new Pulse(100.0 + (index * 110.0), 8.0))];
        PulseResponse found = Fit(new PulseShape(2_000, 10), pulses, 5.0, 0.01, [])!;
        Assert.False(found.IsDetermined);
    }

    [Fact]
    public void What_lies_outside_the_stretch_is_not_looked_at()
    {
        Pulse[] pulses = [.. Enumerable.Range(0, 10).Select(index => new Pulse(100.0 + (index * 110.0), 8.0))];
        double[] seconds = [.. Enumerable.Range(0, 1_400).Select(index => (double)index)];
        double[] values = [.. seconds.Select(time => time > 1_150.0 ? 11.0 : 4.0 + pulses.Sum(pulse => 0.25 * new PulseShape(5, 10).Share(time - pulse.Start, pulse.Seconds)))];
        PulseResponse found = PulseFit.Of(seconds, values, pulses, [], new Stretch(90.0, 1_150.0))!;
        Assert.Equal(new Stretch(90.0, 1_150.0), found.Seen);
        Assert.InRange(found.Shape.LagSeconds, 9.8, 10.2);
        Assert.InRange(found.Noise, 0.0, 1e-3);
    }

    /// <summary>The rule: more than half of the figure, or found where the search ends.</summary>
    [Theory]
    [InlineData(10.0, 5.0, true)]
    [InlineData(10.0, 5.1, false)]
    [InlineData(0.0, 0.0, true)]
    public void A_figure_is_determined_to_half_of_it(double value, double error, bool determined)
    {
        Assert.Equal(determined, new Estimate(value, error).IsDetermined);
        Assert.False((new Estimate(value, error) with { IsFound = false }).IsDetermined);
    }

    [Fact]
    public void Pulses_whose_answers_overlap_are_told_apart()
    {
        Pulse[] pulses = [.. Enumerable.Range(0, 12).Select(index => new Pulse(50.0 + (index * 30.0), 5.0))];
        PulseResponse found = Fit(new PulseShape(12, 40), pulses, 2.0, 0.005, [])!;
        Assert.InRange(found.Shape.DeadTimeSeconds + found.Shape.LagSeconds, 46.0, 58.0);
        Assert.InRange(found.After(12) - found.Before, 2.9, 3.1);
    }

    [Fact]
    public void Another_reagent_ends_the_series()
    {
        Pulse[] pulses = [.. Enumerable.Range(0, 10).Select(index => new Pulse(100.0 + (index * 110.0), 8.0))];
        PulseResponse found = Fit(new PulseShape(5, 10), pulses, 2.0, 0.01, [new Pulse(500.0, 8.0)])!;
        Assert.Equal(pulses.Skip(4), found.Pulses.AsEnumerable());
    }

    [Fact]
    public void Too_few_pulses_say_nothing()
    {
        Pulse[] pulses = [.. Enumerable.Range(0, PulseFit.FewestPulses - 1).Select(index => new Pulse(100.0 + (index * 110.0), 8.0))];
        Assert.Null(Fit(new PulseShape(5, 10), pulses, 2.0, 0.01, []));
    }

    /// <summary>The shape against the sum of many step responses, one for each moment of the pulse.</summary>
    [Theory]
    [InlineData(4, 9, 6)]
    [InlineData(0, 3, 20)]
    [InlineData(12, 30, 1)]
    public void A_pulse_is_many_short_steps(double deadTime, double lag, double pulse)
    {
        const int Slices = 20_000;
        PulseShape shape = new(deadTime, lag);
        for (double time = 0.0; time < 150.0; time += 7.3)
        {
            double sum = 0.0;
            for (int slice = 0; slice < Slices; slice++)
            {
                double since = time - deadTime - ((slice + 0.5) * pulse / Slices);
                sum += since > 0.0 ? (1.0 - Math.Exp(-since / lag)) / Slices : 0.0;
            }

            Assert.Equal(sum, shape.Share(time, pulse), 1e-4);
        }

        Assert.Equal(0.95, shape.Share(pulse + shape.SecondsToShow(0.95, pulse), pulse), 1e-6);
    }

    private static PulseResponse? Fit(PulseShape shape, Pulse[] pulses, double sampleSeconds, double noise, Pulse[] others)
    {
        Random random = new(11);
        double[] seconds = [.. Enumerable.Range(0, (int)((pulses[^1].End + 400.0) / sampleSeconds)).Select(index => index * sampleSeconds)];
        double[] values = [.. seconds.Select(time => 4.0 + pulses.Sum(pulse => 0.25 * shape.Share(time - pulse.Start, pulse.Seconds)) + (noise * Normal(random)))];
        return PulseFit.Of(seconds, values, pulses, others, Stretch.Whole);
    }

    private static double Normal(Random random) => Math.Sqrt(-2.0 * Math.Log(1.0 - random.NextDouble())) * Math.Cos(2.0 * Math.PI * random.NextDouble());
}
