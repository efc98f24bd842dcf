using System.Collections.Immutable;
using Sequencer.Plant.Hydraulics;

namespace Sequencer.Plant.Reaction;

/// <summary>What passes each line and separator, L/s: by its drives, by levels and heads, and from a tank at its heel no more than comes.</summary>
internal sealed class PlantFlows(
    StateLayout layout,
    ImmutableArray<TankBody> tanks,
    ImmutableArray<Source> sources,
    ImmutableArray<DosingLine> dosingLines,
    ImmutableArray<Pipe> pipes,
    ImmutableArray<ISeparator> separators)
{
    /// <summary>Of what goes round in a ring of tanks at their heels.</summary>
    private const int MostRounds = 64;

    /// <summary>Relative difference of flows that count as the same.</summary>
    private const double SameFlow = 1e-12;

    private readonly double[] _drawn = new double[tanks.Length];
    private readonly double[] _fedFromOutside = new double[tanks.Length];
    private readonly double[] _wanted = new double[pipes.Length];
    private readonly double[] _wantedBySeparator = new double[separators.Length];
    private double[] _fed = new double[tanks.Length];
    private double _summedAt = double.NaN;
    private double[] _fedNext = new double[tanks.Length];

    /// <summary>Flow of a line, L/s, at the plant's state at a time; asked again at that time it takes the sums that it has.</summary>
    public double Of(int pipe, double time, ReadOnlySpan<double> state)
    {
        Pipe line = pipes[pipe];
        if (line.FromTank < 0)
        {
            return OfSource(line, time);
        }

        SumWantedOf(line.FromTank, time, state);
        return OfTank(line, time, state);
    }

    /// <summary>Before <see cref="OfTank"/> and <see cref="OfSeparator"/> are asked at another time or state.</summary>
    public void Prepare(double time, ReadOnlySpan<double> state)
    {
        ForgetSums();
        foreach (TankBody tank in tanks)
        {
            if (tank.IsDrawnDown)
            {
                SumWanted(time, state);
                return;
            }
        }
    }

    /// <summary>What drives the flows has changed, or other states were asked about.</summary>
    public void ForgetSums() => _summedAt = double.NaN;

    /// <summary>A flow that no state has a say in: it can be asked for at past times.</summary>
    public double OfSource(Pipe pipe, double time)
    {
        double open = pipe.DosingLine >= 0 ? dosingLines[pipe.DosingLine].Open(time) : 1.0;
        double litresPerSecond = pipe.Pumped is { } pumped ? pipe.PumpedFlow(pumped, time, 0.0) : pipe.Description.RateLitresPerSecond * pipe.Opening(time);
        return litresPerSecond * sources[pipe.FromSource].Available(time) * open;
    }

    public double OfTank(Pipe pipe, double time, ReadOnlySpan<double> state) => Limited(pipe.FromTank, WantedFlow(pipe, time, state), time);

    /// <summary>Filtrate, L/s, at the plant's state at a time.</summary>
    public double Filtrate(ISeparator separator, double time, ReadOnlySpan<double> state)
    {
        SumWantedOf(separator.Trough.Index, time, state);
        return separator.Filtrate(time, OfSeparator(separator, time, state), state);
    }

    /// <summary>What a separator draws from its tank, L/s.</summary>
    public double OfSeparator(ISeparator separator, double time, ReadOnlySpan<double> state) => Limited(separator.Trough.Index, separator.WantedFlow(time, state), time);

    /// <summary>What leaks out of a tank, L/s.</summary>
    public double OfLeak(TankBody tank, double time, ReadOnlySpan<double> state) => Limited(tank.Index, tank.LeakFlow(time, state[layout.Volume(tank.Index)]), time);

    private double WantedFlow(Pipe pipe, double time, ReadOnlySpan<double> state) => pipe.ByLevel is { } control
        ? control.Opening(state[layout.Volume(pipe.FromTank)]) * UncontrolledFlow(pipe, time, state)
        : UncontrolledFlow(pipe, time, state);

    private double UncontrolledFlow(Pipe pipe, double time, ReadOnlySpan<double> state)
    {
        if (pipe.Pumped is { } pumped)
        {
            return pipe.PumpedFlow(pumped, time, tanks[pipe.FromTank].LevelMetres(state[layout.Volume(pipe.FromTank)]));
        }

        double opening = pipe.Opening(time);
        return pipe.Description.Outlet is not { } outlet
            ? pipe.Description.RateLitresPerSecond * opening
            : opening * OutletFlow.LitresPerSecond(
                tanks[pipe.FromTank].LevelMetres(state[layout.Volume(pipe.FromTank)]), outlet.BoreMetres, outlet.DischargeCoefficient);
    }

    /// <summary>The sums matter only where a tank gives no more than comes.</summary>
    private void SumWantedOf(int tank, double time, ReadOnlySpan<double> state)
    {
        if (tanks[tank].IsDrawnDown && _summedAt != time)
        {
            SumWanted(time, state);
            _summedAt = time;
        }
    }

    /// <summary>
    /// What is drawn from each tank before the limit of a heel, and what feeds it. Where tanks at their heels feed one another in a row the
    /// flows are found from the first to the last of them; in a ring each round brings what goes round once more.
    /// </summary>
    private void SumWanted(double time, ReadOnlySpan<double> state)
    {
        _drawn.AsSpan().Clear();
        _fedFromOutside.AsSpan().Clear();
        int drawnDown = 0;
        foreach (TankBody tank in tanks)
        {
            drawnDown += tank.IsDrawnDown ? 1 : 0;
            _drawn[tank.Index] += tank.HasHole ? tank.LeakFlow(time, state[layout.Volume(tank.Index)]) : 0.0;
        }

        for (int index = 0; index < pipes.Length; index++)
        {
            Pipe pipe = pipes[index];
            if (pipe.FromTank >= 0)
            {
                _wanted[index] = WantedFlow(pipe, time, state);
                _drawn[pipe.FromTank] += _wanted[index];
            }
            else if (pipe.ToTank >= 0)
            {
                _fedFromOutside[pipe.ToTank] += OfSource(pipe, time);
            }
        }

        for (int index = 0; index < separators.Length; index++)
        {
            _wantedBySeparator[index] = separators[index].WantedFlow(time, state);
            _drawn[separators[index].Trough.Index] += _wantedBySeparator[index];
        }

        _fedFromOutside.CopyTo(_fed, 0);
        int rounds = drawnDown > 1 ? MostRounds : drawnDown;
        while (rounds > 0 && AddFedByTanks(time, state))
        {
            rounds--;
        }
    }

    /// <summary>False where a tank at its heel is fed as in the round before.</summary>
    private bool AddFedByTanks(double time, ReadOnlySpan<double> state)
    {
        _fedFromOutside.CopyTo(_fedNext, 0);
        for (int index = 0; index < pipes.Length; index++)
        {
            Pipe pipe = pipes[index];
            if (pipe.FromTank >= 0 && pipe.ToTank >= 0)
            {
                _fedNext[pipe.ToTank] += Limited(pipe.FromTank, _wanted[index], time);
            }
        }

        for (int index = 0; index < separators.Length; index++)
        {
            ISeparator separator = separators[index];
            if (separator.FiltrateTo.IsDrawnDown)
            {
                _fedNext[separator.FiltrateTo.Index] += separator.Filtrate(time, Limited(separator.Trough.Index, _wantedBySeparator[index], time), state);
            }
        }

        bool changed = false;
        foreach (TankBody tank in tanks)
        {
            changed |= tank.IsDrawnDown && Math.Abs(_fedNext[tank.Index] - _fed[tank.Index]) > SameFlow * _fedNext[tank.Index];
        }

        (_fed, _fedNext) = (_fedNext, _fed);
        return changed;
    }

    /// <summary>Of what is wanted from a tank, L/s, what it gives: at its heel no more than comes. Read before the end of a step that ends there it has not come to it.</summary>
    private double Limited(int tank, double wanted, double time) => time >= tanks[tank].DrawnDownFrom && _drawn[tank] > _fed[tank] ? wanted * _fed[tank] / _drawn[tank] : wanted;
}
