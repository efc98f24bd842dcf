using Sequencer.Plant.Description;
using Sequencer.Plant.Hydraulics;
using Sequencer.Plant.Instruments;
using Sequencer.Plant.Reaction;

namespace Sequencer.Plant;

/// <summary>What can be asked about the true state of a plant, with names and units for people.</summary>
internal static class PlantQuantities
{
    private const double LitresPerCubicMetre = 1000.0;
    private const double SecondsPerMinute = 60.0;
    private const double SecondsPerHour = 3600.0;

    public static IEnumerable<NamedValue> Of(PlantParts parts, PlantMotion motion, InstrumentPanel panel) =>
    [
        .. parts.Tanks.SelectMany(tank => OfTank(tank, parts, motion)),
        .. parts.Drives.Select(drive => OfDrive(drive, motion)),
        .. parts.Pipes.Select((pipe, index) => Named(pipe.Description.Name, "flow", "L/min", () => motion.Equations.Flows.Of(index, motion.Time, motion.Now) * SecondsPerMinute)),
        .. panel.Loops.Select(loop => Named(loop.Description.Name, "flow", "L/min", () => loop.FlowLitresPerSecond * SecondsPerMinute)),
        .. parts.Settlers.SelectMany(settler => OfSettling(settler, parts, motion)),
        .. parts.Drums.SelectMany((drum, index) => OfDrum(drum, index, parts, motion)),
        .. parts.SealWaters.Select(water => Named(water.Description.Name, "temperature", "C", () => water.Celsius(motion.Now))),
        .. parts.SealWaters.Select(water => Named(water.Description.Name, "cooling", "kW", () => water.CoolingKilowatts(motion.Time, motion.Now))),
        .. parts.Presses.SelectMany((press, index) => OfPress(press, index, parts, motion)),
        .. parts.Model.Reagents.Select(reagent => Named(reagent.Name, "store", "L", () => Math.Max(0.0, parts.StoreLitres(parts.Source(reagent.Name), motion.Now)))),
        .. parts.DosingLines.Select((line, index) => Named(line.Description.Name, "lime", "mol", () => motion.Now[parts.Layout.DosingLine(index) + parts.Contents.Lime])),
        .. parts.DosingLines.Select(line => Named(line.Description.Name, "blocked", "", () => line.IsBlocked ? 1.0 : 0.0)),
    ];

    private static IEnumerable<NamedValue> OfTank(TankBody tank, PlantParts parts, PlantMotion motion)
    {
        string name = tank.Description.Name;
        double Litres() => motion.Now[parts.Layout.Volume(tank.Index)];
        yield return Named(name, "volume", "m3", () => Litres() / LitresPerCubicMetre);
        yield return Named(name, "level", "m", () => tank.LevelMetres(Litres()));
        yield return Named(name, "pH", "pH", () => motion.Waters.Ph(tank.Index));
        yield return Named(name, "temperature", "C", () => motion.Now[parts.Layout.Heat(tank.Index)] / Litres());
        if (motion.Waters.HasConductivity(tank.Index))
        {
            yield return Named(name, "conductivity", "mS/cm", () => motion.Waters.Conductivity(tank.Index));
        }

        if (!parts.Model.Precipitates.IsEmpty)
        {
            yield return Named(name, "precipitate", "mg/L", () => motion.Waters.PrecipitateGramsPerLitre(tank.Index) * 1e3);
        }

        if (parts.Contents.Cyanide >= 0)
        {
            yield return Named(name, "hydrogen_cyanide", "mmol/L", () => motion.Waters.HydrogenCyanide(tank.Index) * 1000.0);
        }

        if (tank.Blower is { } blower)
        {
            yield return Named(name, "air", "m3/h", () => blower.Flow(motion.Time, tank.LevelMetres(Litres())) * SecondsPerHour / LitresPerCubicMetre);
        }

        yield return Named(name, "overflowing", "", () => motion.Time >= tank.FullFrom ? 1.0 : 0.0);
        for (int content = 0; content < parts.Contents.Count; content++)
        {
            int place = parts.Layout.Mixed(tank.Index) + content;
            bool isWeighed = parts.Contents.IsWeighed(content);
            double scale = isWeighed ? 1.0 : 1000.0;
            yield return Named(name, parts.Contents.Names[content], isWeighed ? "g/L" : "mmol/L", () => motion.Now[place] / Litres() * scale);
        }
    }

    private static IEnumerable<NamedValue> OfSettling(TankSettling settling, PlantParts parts, PlantMotion motion)
    {
        string name = parts.Tanks[settling.Tank].Description.Name;
        yield return Named(name, "interface", "m", () => settling.InterfaceMetres(motion.Now));
        yield return Named(name, "bed", "L", () => settling.BedLitres(motion.Now));
        yield return Named(name, "floc_size", "mm", () => settling.FlocMetres(motion.Now) * 1e3);
        yield return Named(name, "dispersed", "mg/L", () => settling.DispersedGramsPerLitre(motion.Now) * 1e3);
    }

    private static IEnumerable<NamedValue> OfDrum(DrumFilter drum, int index, PlantParts parts, PlantMotion motion)
    {
        string name = drum.Description.Name;
        yield return Named(name, "coat", "mm", () => drum.Holds.CoatMetres(motion.Now) * 1e3);
        yield return Named(name, "cake", "g/m2", () => drum.Holds.CakeKilogramsPerSquareMetre(motion.Now) * 1e3);
        yield return Named(name, "vacuum", "kPa", () => -drum.VacuumPascals(motion.Now) * 1e-3);
        yield return Named(name, "filtrate", "m3/h", () => motion.Equations.Flows.Filtrate(drum, motion.Time, motion.Now) * 3.6);
        yield return Named(name, "filter_aid_taken", "kg", () => motion.Now[parts.Layout.Skimmed(index)] * 1e-3);
        yield return Named(name, "solids_taken", "kg", () => motion.Now[parts.Layout.Skimmed(index) + 1] * 1e-3);
        yield return Named(name, "wet_taken", "kg", () => drum.Holds.WetKilogramsTaken(motion.Now));
        yield return Named(name, "moisture", "%", () => 100.0 * drum.Holds.Moisture(motion.Now));
    }

    private static IEnumerable<NamedValue> OfPress(FilterPress press, int index, PlantParts parts, PlantMotion motion)
    {
        string name = press.Description.Name;
        yield return Named(name, "full", "%", () => 100.0 * press.Holds.Litres(motion.Now) / press.Description.ChambersLitres);
        yield return Named(name, "cake", "kg", () => press.Holds.DryGrams(motion.Now) * 1e-3);
        yield return Named(name, "moisture_inside", "%", () => 100.0 * press.Holds.Moisture(motion.Now));
        yield return Named(name, "pressure", "kPa", () => press.PressurePascals(motion.Time, motion.Now) * 1e-3);
        yield return Named(name, "filtrate", "m3/h", () => motion.Equations.Flows.Filtrate(press, motion.Time, motion.Now) * 3.6);
        foreach (NamedValue total in TotalsOfPress(press, index, parts, motion))
        {
            yield return total;
        }
    }

    /// <summary>What has come of a press so far.</summary>
    internal static IEnumerable<NamedValue> TotalsOfPress(FilterPress press, int index, PlantParts parts, PlantMotion motion)
    {
        string name = press.Description.Name;
        yield return Named(name, "filtered", "L", () => motion.Now[parts.Layout.PressFiltered(index)]);
        yield return Named(name, "dropped_dry", "kg", () => press.Holds.DroppedDryKilograms(motion.Now));
        yield return Named(name, "dropped_wet", "kg", () => press.Holds.DroppedWetKilograms(motion.Now));
        yield return Named(name, "moisture", "%", () => 100.0 * press.Holds.DroppedMoisture(motion.Now));
    }

    private static NamedValue OfDrive(Drive drive, PlantMotion motion) => Named(
        drive.Description.Tag,
        drive.Description.Kind == DriveKind.Valve ? "opening" : "speed",
        "%",
        () => 100.0 * drive.Motion(motion.Time));

    internal static NamedValue Named(string tag, string what, string unit, Func<double> value) =>
        new(new PlantQuantity($"{tag}.{what}", unit), value);
}
