using Sequencer.Plant.Instruments;

namespace Sequencer.Plant.Tests.Instruments;

public sealed class SignalTests
{
    /// <summary>pH 0 to 14 on 4 to 20 mA with the limits of NAMUR NE 43: 3.8 mA is pH -0.175, 20.5 mA is pH 14.44.</summary>
    [Theory]
    [InlineData(-1.0, 3.8)]
    [InlineData(-0.175, 3.8)]
    [InlineData(0.0, 4.0)]
    [InlineData(7.0, 12.0)]
    [InlineData(14.0, 20.0)]
    [InlineData(14.4375, 20.5)]
    [InlineData(15.0, 20.5)]
    public void A_measuring_transmitter_stays_within_the_measuring_band(double ph, double milliamps) =>
        Assert.Equal(milliamps, CurrentLoop.Milliamps(ph, 0.0, 14.0), 1e-9);

    /// <summary>NAMUR NE 43: 3.6 mA and below, 21.0 mA and above mean failure; 3.8 to 20.5 mA measure.</summary>
    [Fact]
    public void Failure_currents_lie_inside_the_failure_bands_and_measuring_ones_outside()
    {
        Assert.True(CurrentLoop.FailedLow < 3.6 && CurrentLoop.WireBreak < 3.6);
        Assert.True(CurrentLoop.FailedHigh > 21.0);
        Assert.Equal((3.8, 20.5), (CurrentLoop.LowestMeasuring, CurrentLoop.HighestMeasuring));
    }

    /// <summary>A professional society's note on electrode response: 86 % after dead time and 2 tau, 98 % after 4 tau; tau 5 s, dead time 2 s.</summary>
    [Fact]
    public void A_step_is_seen_after_the_dead_time_with_the_lag()
    {
        TransportDelay delay = new(2.0, 0.0);
        FirstOrderLags lag = new(new double[4], [1.0, 0.0, 5.0, 8.0]);
        double[] inputs = new double[4];
        Dictionary<double, double> expected = new() { [2.0] = 0.0, [7.0] = 0.632, [12.0] = 0.865, [22.0] = 0.982 };
        for (int scan = 1; scan <= 300; scan++)
        {
            double time = Math.Round(scan * 0.1, 1);
            inputs[2] = delay.Advance(time, 1.0);
            lag.Advance(inputs, 0.1);
            if (expected.TryGetValue(time, out double share))
            {
                // The step itself spreads over one scan: 0.1 s of the response.
                Assert.Equal(share, lag.Outputs[2], 0.01);
            }
        }
    }

    /// <summary>tau y' + y = t from rest: y = t - tau (1 - exp(-t / tau)).</summary>
    [Fact]
    public void A_lag_follows_a_straight_input_exactly_whatever_the_scan()
    {
        foreach (double scan in new[] { 0.1, 3.0 })
        {
            FirstOrderLags lags = new(new double[4], [0.0, 1.0, 2.0, 4.0]);
            for (int reading = 1; reading * scan <= 30.0 + 1e-9; reading++)
            {
                double time = reading * scan;
                lags.Advance([time, time, time, time], scan);
                Assert.Equal(time, lags.Outputs[0]);
                Assert.Equal(time - (1.0 - Math.Exp(-time)), lags.Outputs[1], 1e-12);
                Assert.Equal(time - (2.0 * (1.0 - Math.Exp(-time / 2.0))), lags.Outputs[2], 1e-12);
                Assert.Equal(time - (4.0 * (1.0 - Math.Exp(-time / 4.0))), lags.Outputs[3], 1e-12);
            }
        }
    }

    [Fact]
    public void What_stands_in_a_pipe_stays_there_until_it_flows_again()
    {
        TransportDelay pipe = new(2.0, 7.0);
        for (int place = 1; place <= 10; place++)
        {
            pipe.Advance(place, place);
        }

        Assert.Equal(8.0, pipe.Advance(10.0, 99.0));
        Assert.Equal(8.0, pipe.Advance(10.0, 50.0));
        Assert.Equal(9.0, pipe.Advance(11.0, 50.0));
        Assert.Equal(10.0, pipe.Advance(12.0, 50.0));
        Assert.Equal(50.0, pipe.Advance(13.0, 50.0));
    }

    [Fact]
    public void Noise_has_the_spread_asked_for_and_no_memory()
    {
        const int Count = 100_000;
        Noise noise = new(42, 5);
        double[] values = [.. Enumerable.Range(0, Count).Select(reading => noise.Normal(reading)[3])];
        double mean = values.Average();
        double deviation = Math.Sqrt(values.Select(value => (value - mean) * (value - mean)).Average());
        double neighbours = values.Zip(values.Skip(1), (left, right) => left * right).Average();
        // Five standard errors of each figure.
        Assert.Equal(0.0, mean, 5.0 / Math.Sqrt(Count));
        Assert.Equal(1.0, deviation, 5.0 / Math.Sqrt(2.0 * Count));
        Assert.Equal(0.0, neighbours, 5.0 / Math.Sqrt(Count));
        Assert.Equal(values[7], new Noise(42, 9).Normal(7)[3]);
        Assert.NotEqual(values[7], new Noise(43, 5).Normal(7)[3]);
        Assert.NotEqual(values[7], noise.Normal(7)[4]);
    }

    /// <summary>Lanes that are computed together, those beside them, and readings that share a pair of uniform numbers.</summary>
    [Fact]
    public void Noise_is_normal_and_no_two_instruments_share_it()
    {
        const int Instruments = 10;
        const int Count = 50_000;
        Noise noise = new(7, Instruments);
        double[][] values = [.. Enumerable.Range(0, Count).Select(reading => noise.Normal(reading)[..Instruments].ToArray())];
        double fiveErrors = 5.0 / Math.Sqrt(Count);
        for (int one = 0; one < Instruments; one++)
        {
            for (int other = 0; other < one; other++)
            {
                Assert.Equal(0.0, values.Average(reading => reading[one] * reading[other]), fiveErrors);
            }

            Assert.Equal(0.0, Enumerable.Range(0, Count / 2).Average(pair => values[2 * pair][one] * values[(2 * pair) + 1][one]), fiveErrors * Math.Sqrt(2.0));
        }

        // Shares beyond one, two and three standard deviations (Abramowitz and Stegun, Handbook of Mathematical Functions, table 26.1), of all values.
        double[] all = [.. values.SelectMany(reading => reading)];
        Assert.Equal(0.3173, all.Count(value => Math.Abs(value) > 1.0) / (double)all.Length, 0.004);
        Assert.Equal(0.0455, all.Count(value => Math.Abs(value) > 2.0) / (double)all.Length, 0.0015);
        Assert.Equal(0.0027, all.Count(value => Math.Abs(value) > 3.0) / (double)all.Length, 0.0004);
        Assert.True(all.Max(Math.Abs) < 5.8);
    }
}
