using System.Collections.Immutable;
using Sequencer.Plant.Description;
using Sequencer.Plant.Hydraulics;
using Sequencer.Plant.Reaction;

namespace Sequencer.Plant.Instruments;

/// <summary>The true values, in base units, of what instruments measure where they are.</summary>
internal sealed class MeasuredValues(PlantParts parts, PlantMotion motion, ImmutableArray<SampleLoop> loops)
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

    /// <summary>What a switch watches.</summary>
    public Func<double> Of(SwitchDescription described) =>
        described.Measures is Measured.Turns ? Turned(described)
        : described.AtFullSpeed is { } pressure ? OfPump(described.In, pressure)
        : described.Measures is Measured.Turbidity ? Cloudiness(described.In, described.PerSuspended)
        : Actual(described.Measures, described.In);

    private Func<double> OfPump(string tag, double pressureAtFullSpeed)
    {
        Drive pump = parts.Drive(tag);
        return () => pressureAtFullSpeed * pump.Effect(motion.Time);
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
            return () => perSuspended * settling.SolidsDrawn(point, motion.Now);
        }

        int mixed = parts.Layout.Mixed(tank);
        int[] weighed = [.. Enumerable.Range(0, parts.Contents.Count).Where(parts.Contents.IsWeighed)];
        return () =>
        {
            double grams = 0.0;
            foreach (int content in weighed)
            {
                grams += Math.Max(0.0, motion.Now[mixed + content]);
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
            Measured.Temperature when seal is not null => () => seal.Celsius(motion.Now),
            Measured.Flow when seal is not null => () => seal.Flow(motion.Time),
            Measured.Pressure when press is not null => () => press.PressurePascals(motion.Time, motion.Now) / 1000.0,
            Measured.Flow when press is not null => () => motion.Equations.Flows.Filtrate(press, motion.Time, motion.Now),
            Measured.Pressure when drum is not null => () => -drum.VacuumPascals(motion.Now) / 1000.0,
            Measured.Flow when drum is not null => () => motion.Equations.Flows.Filtrate(drum, motion.Time, motion.Now),
            Measured.Volume when tank < 0 => () => Math.Max(0.0, parts.StoreLitres(source, motion.Now)),
            Measured.Volume => () => Volume(tank),
            Measured.Level => () => parts.Tanks[tank].LevelMetres(Volume(tank)),
            Measured.Ph => () => motion.Waters.Ph(tank),
            Measured.Redox => () => motion.Waters.Millivolts(tank),
            Measured.Conductivity => () => motion.Waters.Conductivity(tank),
            Measured.Temperature => () => motion.Now[parts.Layout.Heat(tank)] / Volume(tank),
            _ when loop is not null => () => loop.FlowLitresPerSecond,
            _ => () => motion.Equations.Flows.Of(line, motion.Time, motion.Now),
        };
    }

    private double Volume(int tank) => motion.Now[parts.Layout.Volume(tank)];
}
