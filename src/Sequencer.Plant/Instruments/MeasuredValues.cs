using System.Collections.Immutable;
using Sequencer.Plant.Description;
using Sequencer.Plant.Hydraulics;
using Sequencer.Plant.Reaction;

namespace Sequencer.Plant.Instruments;

/// <summary>The true values, in base units, of what instruments measure where they are, at a moment.</summary>
/// <param name="parts">of the plant</param>
/// <param name="motion">that carries them</param>
/// <param name="loops">all sample loops</param>
/// <param name="at">when: <see cref="PlantMotion.Present"/>, or for what <see cref="IsCarried"/> any moment within the last step</param>
internal sealed class MeasuredValues(PlantParts parts, PlantMotion motion, ImmutableArray<SampleLoop> loops, Instant at)
{
    /// <summary>Those that switches see turn.</summary>
    public List<MarkedShaft> Shafts { get; } = [];

    /// <summary>What a transmitter measures.</summary>
    public Func<double> Of(TransmitterDescription described)
    {
        if (described.Steady is not { } steady)
        {
            return described.Measures is Measured.Turbidity ? Cloudiness(described.In, described.PerSuspended) : Actual(described.Measures, described.In);
        }

        return described.Measures is Measured.Pressure ? OfPump(described.In, steady) : () => steady;
    }

    /// <summary>What a switch watches follows from time, the state and what the equations are told where a step begins. A water's equilibrium, a sample loop and a shaft are followed from scan to scan.</summary>
    public static bool IsCarried(SwitchDescription described, ImmutableArray<SampleLoop> loops) =>
        described.Measures is not (Measured.Turns or Measured.Ph or Measured.Redox or Measured.Conductivity)
        && !(described.Measures is Measured.Flow && loops.Any(loop => loop.Description.Name == described.In));

    /// <summary>What a switch watches.</summary>
    public Func<double> Of(SwitchDescription described) =>
        described.Measures is Measured.Turns ? Turned(described)
        : described.AtFullSpeed is { } pressure ? OfPump(described.In, pressure)
        : described.Measures is Measured.Turbidity ? Cloudiness(described.In, described.PerSuspended)
        : Actual(described.Measures, described.In);

    private Func<double> OfPump(string tag, double pressureAtFullSpeed)
    {
        Drive pump = parts.Drive(tag);
        return () => pressureAtFullSpeed * pump.Effect(at.Time);
    }

    /// <summary>In proportion to the solids in the water (our own simplification: it depends on their size too).</summary>
    private Func<double> Cloudiness(string place, double perSuspended)
    {
        int line = parts.Line(place);
        int tank = line >= 0 ? parts.Pipes[line].FromTank : parts.Tank(place);
        if (parts.Settler(tank) is var settler and >= 0)
        {
            TankSettling settling = parts.Settlers[settler];
            DrawPoint point = line >= 0 ? parts.Pipes[line].Description.Draws : DrawPoint.Surface;
            return () => perSuspended * settling.SolidsDrawn(point, at.State);
        }

        int mixed = parts.Layout.Mixed(tank);
        int[] weighed = [.. Enumerable.Range(0, parts.Contents.Count).Where(parts.Contents.IsWeighed)];
        return () =>
        {
            double grams = 0.0;
            foreach (int content in weighed)
            {
                grams += Math.Max(0.0, at.State[mixed + content]);
            }

            return perSuspended * grams / Volume(tank);
        };
    }

    private Func<double> Turned(SwitchDescription described)
    {
        MarkedShaft shaft = new(parts.Drive(described.In), described.TurnSeconds);
        Shafts.Add(shaft);
        return () => shaft.Turned;
    }

    /// <summary>Reads the true value, in base units, of what is measured at a place that the reader has checked to have it.</summary>
    private Func<double> Actual(Measured measures, string place)
    {
        SampleLoop? loop = loops.FirstOrDefault(loop => loop.Description.Name == place);
        int tank = loop?.Tank.Index ?? parts.Tank(place);
        int source = parts.Source(place);
        int line = parts.Line(place);
        DrumFilter? drum = parts.Drums.FirstOrDefault(one => one.Description.Name == place);
        FilterPress? press = parts.Presses.FirstOrDefault(one => one.Description.Name == place);
        SealWater? seal = parts.SealWaters.FirstOrDefault(one => one.Description.Name == place);
        return measures switch
        {
            Measured.Temperature when seal is not null => () => seal.Celsius(at.State),
            Measured.Flow when seal is not null => () => seal.Flow(at.Time),
            Measured.Pressure when press is not null => () => press.PressurePascals(at.Time, at.State) / 1000.0,
            Measured.Flow when press is not null => () => motion.Equations.Flows.Filtrate(press, at.Time, at.State),
            Measured.Pressure when drum is not null => () => -drum.VacuumPascals(at.State) / 1000.0,
            Measured.Flow when drum is not null => () => motion.Equations.Flows.Filtrate(drum, at.Time, at.State),
            Measured.Volume when tank < 0 => () => Math.Max(0.0, parts.StoreLitres(source, at.State)),
            Measured.Volume => () => Volume(tank),
            Measured.Level => () => parts.Tanks[tank].LevelMetres(Volume(tank)),
            Measured.Ph => () => motion.Waters.Ph(tank),
            Measured.Redox => () => motion.Waters.Millivolts(tank),
            Measured.Conductivity => () => motion.Waters.Conductivity(tank),
            Measured.Temperature => () => at.State[parts.Layout.Heat(tank)] / Volume(tank),
            _ when loop is not null => () => loop.FlowLitresPerSecond,
            _ => () => motion.Equations.Flows.Of(line, at.Time, at.State),
        };
    }

    private double Volume(int tank) => at.State[parts.Layout.Volume(tank)];
}
