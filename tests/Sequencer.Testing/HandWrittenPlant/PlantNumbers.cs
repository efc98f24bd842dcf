using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using Sequencer.Plant.Chemistry;
using Sequencer.Plant.Description;
using Sequencer.Plant.Hydraulics;
using Sequencer.Plant.Reaction;

namespace Sequencer.Testing.HandWrittenPlant;

/// <summary>The numbers of a plant and of what its drives are told, as the hand-written program reads them.</summary>
internal static class PlantNumbers
{
    /// <exception cref="NotSupportedException">The plant has a piece that the hand-written program does not know.</exception>
    public static string Write(PlantModel model, MotionScript script)
    {
        Demand(model.DosingLines.IsEmpty && model.Presses.IsEmpty && model.Precipitates.IsEmpty, "dosing lines, presses or solids");
        PlantParts parts = new(model);
        Demand(!parts.Contents.HasReduction && !parts.Contents.HasChlorination, "a reaction");
        StringBuilder text = new();
        Line(model.AmbientCelsius, parts.Contents.Count, parts.Contents.Dissolved.Length, parts.Contents.Calcium, parts.Contents.Lime);
        Line(2.0 * model.Tanks.Max(tank => tank.Mixing.DeadTimeSeconds));
        Line(parts.Tanks.Length);
        foreach (TankBody tank in parts.Tanks)
        {
            TankDescription one = tank.Description;
            Demand(one.Levels.IsEmpty && one.AirSeconds is null, $"the shape or the air of {one.Name}");
            int agitator = one.Mixing.Agitator is { } tag ? Drive(tag) : -1;
            Line(one.AreaSquareMetres, one.OverflowLitres, one.HeelLitres, one.HeatLossSeconds ?? 0.0, one.Mixing.LagSeconds, one.Mixing.UnmixedLagSeconds, agitator);
        }

        Line(model.Drives.Length);
        foreach (DriveDescription drive in model.Drives)
        {
            Demand(drive.SpeedFrom is null, $"the speed of {drive.Tag}");
            Line(drive.TravelSeconds, drive.OpenWhenDeEnergised ? 1 : 0);
        }

        Line(parts.Sources.Length);
        foreach (Source source in parts.Sources)
        {
            Line([source.Celsius, .. source.Content]);
        }

        Line(parts.Pipes.Length);
        foreach (Pipe pipe in parts.Pipes)
        {
            Demand(pipe.Pumped is null, $"the pump's curve of {pipe.Description.Name}");
            OutletDescription? outlet = pipe.Description.Outlet;
            Line(pipe.FromTank, pipe.FromSource, pipe.ToTank, pipe.IsDosed ? 1 : 0, pipe.DeadTimeSeconds, pipe.Description.RateLitresPerSecond, outlet?.BoreMetres ?? 0.0, outlet?.DischargeCoefficient ?? 0.0);
            Line([pipe.Drives.Length, .. pipe.Drives.Select(drive => (double)Drive(drive.Description.Tag))]);
            Line([pipe.OtherWays.Length, .. pipe.OtherWays.Select(drive => (double)Drive(drive.Description.Tag))]);
            Line(pipe.Description.Draws.Metres, pipe.Description.Draws.IsBelowSurface ? 1 : 0);
        }

        Line(parts.Drums.Length);
        foreach (DrumFilter drum in parts.Drums)
        {
            DrumDescription one = drum.Description;
            Demand(one.SealWater is null, $"the seal water of {one.Name}");
            Line(drum.Trough.Index, drum.FiltrateTo.Index, drum.Knife.Index, Drive(one.TurnedBy), Drive(one.VacuumBy), parts.Contents.FilterAid);
            Line(one.TurnSeconds, one.AreaSquareMetres, one.Submerged, one.PipesCarryLitresPerSecond);
            Line(one.DeepestPascals, one.BareClothPascals, one.PullsDownInSeconds, one.FallsBelowPascals, one.ClothPerMetre, one.ClothHoldsBack);
            Line(one.CoatSquareMetres, one.CoatKilogramsPerCubicMetre, one.CoatGrainKilogramsPerCubicMetre, one.ClosesAtMetres);
            Line(one.CakeMetresPerKilogram, one.CakeCompressibility, one.CakeKilogramsPerCubicMetre, one.CakeGrainKilogramsPerCubicMetre);
            Line(drum.Holds.GramsEach);
        }

        Line(parts.Settlers.Length);
        foreach (TankBody tank in parts.Tanks)
        {
            if (tank.Description.Settling is { } settling)
            {
                Line(tank.Index, settling.FlocGramsPerLitre, settling.GrainKilogramsPerCubicMetre, settling.FlocMetres, settling.BedGramsPerLitre, settling.BreakingSeconds, 1000.0 * tank.Description.Mixing.PowerKilowatts);
                Line(SolidWeights.Of(parts.Contents, settling.Retained));
            }
        }

        Line(parts.Layout.Count);
        Line(parts.InitialState());
        Line([.. new StateTable(parts).AllowedErrors().Select(allowed => double.IsFinite(allowed) ? allowed : -1.0)]);
        Line(script.ScanSeconds, script.Seconds);
        Line(script.Commands.Length);
        foreach ((double time, string drive, bool on) in script.Commands)
        {
            Line(time, Drive(drive), on ? 1 : 0);
        }

        WriteChemistry(parts.Contents.Chemistry());
        return text.ToString();

        int Drive(string tag) => model.Drives.Select(drive => drive.Tag).ToImmutableArray().IndexOf(tag);

        void WriteChemistry(ChemicalSystem system)
        {
            Line([system.Components.Length, .. system.Components.Select(component => (double)component.Charge)]);
            Line(system.Species.Length);
            foreach (AqueousSpecies species in system.Species)
            {
                double kind = species.Activity.Equation switch { ActivityEquation.Davies => 0.0, ActivityEquation.ExtendedDebyeHuckel => 1.0, _ => 2.0 };
                ImmutableArray<double> analytic = species.Constant.Analytic;
                Line(species.Charge, kind, species.Activity.A, species.Activity.B, species.Formation.Water, species.Constant.Log10At25, species.Constant.EnthalpyKilojoule);
                Line([analytic.IsEmpty ? 0.0 : 1.0, .. analytic.IsEmpty ? new double[EquilibriumConstant.AnalyticTerms] : [.. analytic]]);
                (double Place, double Coefficient)[] terms = [.. species.Formation.Components.Select(term => ((double)Place(system, term.Component), term.Coefficient)).OrderBy(term => term.Item1)];
                Line([terms.Length, .. terms.SelectMany(term => (double[])[term.Place, term.Coefficient])]);
            }
        }

        void Line(params ReadOnlySpan<double> numbers)
        {
            foreach (double number in numbers)
            {
                text.Append(CultureInfo.InvariantCulture, $"{number:R} ");
            }

            text.Append('\n');
        }
    }

    private static int Place(ChemicalSystem system, string component) => component == ReactionEquation.Proton ? 0 : system.ComponentIndex(component) + 1;

    private static void Demand(bool isKnown, string what)
    {
        if (!isKnown)
        {
            throw new NotSupportedException($"the hand-written program does not know {what}");
        }
    }
}
