using System.Collections.Immutable;
using Sequencer.Plant.Description;
using Sequencer.Plant.Hydraulics;

namespace Sequencer.Plant.Reaction;

/// <summary>
/// The plant's ordinary differential equations: balances of volume, heat and contents over tanks and
/// dosing lines. Dosing and what follows from it, with q the flow, c what a litre brings, theta the
/// dead time and tau the lag of mixing in:
/// <code>
/// on the way:  dw/dt = q(t) c(t) - q(t - theta) c(t - theta)
/// mixing in:   dm/dt = q(t - theta) c(t - theta) - m / tau
/// mixed:       dn/dt = m / tau + (what comes and goes with flows)
/// lime:        dS/dt = -S / tau_d * (1 - (IAP / K)^(1/3)), what dissolves is counted as calcium
/// reactions:   see <see cref="TankReactions"/>
/// air:         see <see cref="TankAir"/>
/// </code>
/// The liquid itself counts at once. pH is no part of the state: it follows from the contents.
/// </summary>
internal sealed class PlantEquations(
    StateLayout layout,
    ContentLayout contents,
    ImmutableArray<TankBody> tanks,
    ImmutableArray<Source> sources,
    ImmutableArray<DosingLine> dosingLines,
    ImmutableArray<Pipe> pipes,
    ImmutableArray<ISeparator> separators,
    ImmutableArray<TankSettling> settlers,
    TankReactions reactions,
    TankAir air,
    double ambientCelsius)
{
    /// <summary>Of saturation with lime: below it lime dissolves as in pure water.</summary>
    private const double FarFromSaturated = 0.01;

    private readonly TankTransfer _transfer = new(layout, [.. tanks.Select(tank => settlers.FirstOrDefault(settler => settler.Tank == tank.Index))]);
    private readonly double[] _throughDosingLine = new double[dosingLines.Length];
    private readonly double[] _limeSaturationOfCalcium = new double[tanks.Length];
    private readonly double _limeDissolvesInSeconds = sources
        .Where(source => source.Reagent is { LimeMolPerLitre: > 0.0 })
        .Select(source => source.Reagent?.LimeDissolvesInSeconds ?? 1.0)
        .DefaultIfEmpty(1.0)
        .Max();

    /// <summary>What passes lines and separators.</summary>
    public PlantFlows Flows { get; } = new(layout, tanks, sources, dosingLines, pipes, separators);

    public void Rates(double time, ReadOnlySpan<double> state, Span<double> rates)
    {
        rates.Clear();
        _throughDosingLine.AsSpan().Clear();
        Flows.Prepare(time, state);
        for (int index = 0; index < pipes.Length; index++)
        {
            Pipe pipe = pipes[index];
            double flow = pipe.FromTank < 0 ? Flows.OfSource(pipe, time) : Flows.OfTank(pipe, time, state);
            rates[layout.Passed(index)] = flow;
            if (pipe.FromTank >= 0)
            {
                _transfer.AddRates(pipe.FromTank, pipe.Description.Draws, pipe.ToTank, flow, state, rates);
            }
            else
            {
                Bring(pipe, flow, time, rates);
            }
        }

        for (int line = 0; line < dosingLines.Length; line++)
        {
            EmptyDosingLine(line, state, rates);
        }

        foreach (ISeparator separator in separators)
        {
            separator.AddRates(time, Flows.OfSeparator(separator, time, state), _transfer, state, rates);
        }

        foreach (TankSettling settler in settlers)
        {
            settler.AddRates(time, state, rates);
        }

        foreach (TankBody tank in tanks)
        {
            MixIn(tank, time, state, rates);
            reactions.AddRates(tank, state, rates);
            air.AddRates(tank, time, state, rates);
            Leak(tank, time, state, rates);
            RunOver(tank, state, rates);
        }
    }

    /// <summary>
    /// Takes how near to saturation with lime a tank's water is (0 to 1) and its calcium, mol/L. Until it is told anew, more calcium brings it nearer in proportion: so it
    /// is where lime alone dissolves; far from saturation it makes no difference.
    /// </summary>
    public void TakeLimeSaturation(int tank, double share, double calcium) =>
        _limeSaturationOfCalcium[tank] = share < FarFromSaturated || !(calcium > 0.0) ? 0.0 : share / calcium;

    /// <summary>The first time after <paramref name="time"/> at which anything that drives the equations has a kink.</summary>
    public double NextKink(double time)
    {
        double next = double.PositiveInfinity;
        foreach (Pipe pipe in pipes)
        {
            next = Math.Min(next, NextKink(pipe, time));
            if (pipe.DeadTimeSeconds > 0.0)
            {
                next = Math.Min(next, NextKink(pipe, time - pipe.DeadTimeSeconds) + pipe.DeadTimeSeconds);
            }
        }

        foreach (ISeparator separator in separators)
        {
            next = Math.Min(next, separator.NextKink(time));
        }

        foreach (TankBody tank in tanks)
        {
            next = Math.Min(next, tank.NextKink(time));
        }

        return next;
    }

    private double NextKink(Pipe pipe, double time)
    {
        double next = pipe.NextKink(time);
        next = pipe.FromSource >= 0 ? Math.Min(next, sources[pipe.FromSource].NextKink(time)) : next;
        return pipe.DosingLine >= 0 ? Math.Min(next, dosingLines[pipe.DosingLine].NextKink(time)) : next;
    }

    /// <summary>From outside into a tank, or past it.</summary>
    private void Bring(Pipe pipe, double flow, double time, Span<double> rates)
    {
        Source source = sources[pipe.FromSource];
        rates[layout.CameIn] += flow;
        AddContents(rates, layout.CameIn + 1, source, flow * source.Strength(time));
        if (pipe.ToTank < 0)
        {
            rates[layout.WentOut] += flow;
            AddContents(rates, layout.WentOut + 1, source, flow * source.Strength(time));
            return;
        }

        rates[layout.Volume(pipe.ToTank)] += flow;
        rates[layout.Heat(pipe.ToTank)] += flow * source.Celsius;
        if (!pipe.IsDosed)
        {
            AddContents(rates, layout.Mixed(pipe.ToTank), source, flow * source.Strength(time));
            return;
        }

        double past = time - pipe.DeadTimeSeconds;
        double arriving = Flows.OfSource(pipe, past);
        AddContents(rates, layout.OnTheWay(pipe.ToTank), source, (flow * source.Strength(time)) - (arriving * source.Strength(past)));
        int target = layout.Mixing(pipe.ToTank);
        if (pipe.DosingLine >= 0)
        {
            target = layout.DosingLine(pipe.DosingLine);
            _throughDosingLine[pipe.DosingLine] += arriving;
        }

        AddContents(rates, target, source, arriving * source.Strength(past));
    }

    private static void AddContents(Span<double> rates, int first, Source source, double litresPerSecond) =>
        Amounts.Add(rates.Slice(first, source.Content.Length), litresPerSecond, source.Content);

    /// <summary>A dosing line as one mixed volume: what comes in pushes out the mean of what it holds.</summary>
    private void EmptyDosingLine(int line, ReadOnlySpan<double> state, Span<double> rates)
    {
        double share = _throughDosingLine[line] / dosingLines[line].Description.HoldsLitres;
        if (share == 0.0)
        {
            return;
        }

        int target = layout.Mixing(TankOf(line));
        int held = layout.DosingLine(line);
        Amounts.Move(state.Slice(held, contents.Count), share, rates.Slice(held, contents.Count), rates.Slice(target, contents.Count));
    }

    private int TankOf(int dosingLine)
    {
        foreach (Pipe pipe in pipes)
        {
            if (pipe.DosingLine == dosingLine)
            {
                return pipe.ToTank;
            }
        }

        throw new InvalidOperationException("liquid went through a dosing line that no line uses");
    }

    private void MixIn(TankBody tank, double time, ReadOnlySpan<double> state, Span<double> rates)
    {
        double rate = tank.MixingRate(time, state[layout.Volume(tank.Index)]);
        int mixed = layout.Mixed(tank.Index);
        int mixing = layout.Mixing(tank.Index);
        Amounts.Move(state.Slice(mixing, contents.Count), rate, rates.Slice(mixing, contents.Count), rates.Slice(mixed, contents.Count));

        double volume = state[layout.Volume(tank.Index)];
        if (contents.Calcium >= 0)
        {
            double saturation = state[mixed + contents.Calcium] / volume * _limeSaturationOfCalcium[tank.Index];
            double dissolving = state[mixed + contents.Lime] / _limeDissolvesInSeconds * Math.Max(0.0, 1.0 - saturation);
            rates[mixed + contents.Lime] -= dissolving;
            rates[mixed + contents.Calcium] += dissolving;
        }

        if (tank.Description.HeatLossSeconds is { } seconds)
        {
            int heat = layout.Heat(tank.Index);
            rates[heat] += ((ambientCelsius * volume) - state[heat]) / seconds;
        }
    }

    private void Leak(TankBody tank, double time, ReadOnlySpan<double> state, Span<double> rates)
    {
        if (tank.HasHole)
        {
            double flow = Flows.OfLeak(tank, time, state);
            rates[layout.Leaked(tank.Index)] = flow;
            _transfer.AddRates(tank.Index, DrawPoint.Floor, -1, flow, state, rates);
        }
    }

    private void RunOver(TankBody tank, ReadOnlySpan<double> state, Span<double> rates)
    {
        double surplus = rates[layout.Volume(tank.Index)];
        if (!tank.IsFull || surplus <= 0.0)
        {
            return;
        }

        rates[layout.Overflowed(tank.Index)] += surplus;
        _transfer.AddRates(tank.Index, DrawPoint.Surface, -1, surplus, state, rates);
    }
}
