using System.Collections.Immutable;
using Sequencer.Plant.Hydraulics;
using Sequencer.Plant.Ledger;

namespace Sequencer.Plant.Reaction;

/// <summary>Holds what is there now, what was there and what came and went against each other.</summary>
internal sealed class BalanceSheet(PlantParts parts, PlantMotion motion, SolidsMeter solids)
{
    private const double GramsPerKilogram = 1000.0;
    private const double MillimetresPerMetre = 1000.0;

    private readonly double[] _initial = motion.Now.ToArray();
    private readonly double[] _initialSolids = [.. parts.Tanks.Select(tank => solids.KilogramsIn(tank))];
    private readonly ImmutableArray<ImmutableArray<int>> _conserved = parts.Contents.Conserved();

    public PlantBalances Draw()
    {
        double worst = 0.0;
        string name = "";
        foreach (ImmutableArray<int> together in _conserved)
        {
            double left = Left(together);
            if (Math.Abs(left) > Math.Abs(worst))
            {
                (worst, name) = (left, parts.Contents.Names[together[0]]);
            }
        }

        return new PlantBalances(VolumeLeft(), worst, name, motion.Waters.ChargeImbalance(), motion.Waters.TooStrong());
    }

    /// <summary>All but what only stands for the place of a knife.</summary>
    public PlantLedger Ledger() => new(
        [.. parts.Tanks.Where(tank => !parts.IsKnife(tank.Index)).Select(tank => new TankLedger(
            tank.Description.Name,
            tank.Description.TreatsBatches,
            _initial[parts.Layout.Volume(tank.Index)],
            motion.Now[parts.Layout.Volume(tank.Index)],
            motion.Now[parts.Layout.Overflowed(tank.Index)],
            _initialSolids[tank.Index],
            solids.KilogramsIn(tank)))],
        [.. Enumerable.Range(0, parts.Pipes.Length).Where(line => !parts.IsKnife(parts.Pipes[line].FromTank) && !parts.IsKnife(parts.Pipes[line].ToTank)).Select(Line),
            .. parts.Tanks.Where(tank => parts.LeakedLitres(tank.Index, motion.Now) > 0.0).Select(Leak)],
        [.. parts.Contents.Names.Select((name, content) => new SubstanceLedger(
            name,
            parts.Contents.IsWeighed(content) ? "g" : "mol",
            Inventory(_initial, content),
            motion.Now[parts.Layout.CameIn + 1 + content],
            motion.Now[parts.Layout.WentOut + 1 + content],
            Inventory(motion.Now, content)))],
        [.. parts.Drums.Select((drum, index) => new CakeLedger(
            drum.Description.Name,
            drum.Description.Trough,
            $"knife of {drum.Description.Name}",
            motion.Now[parts.Layout.Skimmed(index)] / GramsPerKilogram,
            motion.Now[parts.Layout.Skimmed(index) + 1] / GramsPerKilogram,
            drum.Holds.WetKilogramsTaken(motion.Now),
            motion.Now[parts.Layout.Filtered(index)],
            drum.Description.FiltrateTo,
            drum.Holds.DryKilograms(_initial),
            drum.Holds.DryKilograms(motion.Now),
            drum.Holds.LitresTaken(motion.Now),
            drum.Holds.HeldLitres(_initial),
            drum.Holds.HeldLitres(motion.Now),
            drum.Holds.WaterLitres(motion.Now),
            drum.Holds.CoatMetres(motion.Now) * MillimetresPerMetre,
            drum.Holds.CoatMetresOf(motion.Now[parts.Layout.Skimmed(index)]) * MillimetresPerMetre)), .. parts.Presses.Select((press, index) => new CakeLedger(
            press.Description.Name,
            press.Trough.Description.Name,
            $"cakes of {press.Description.Name}",
            0.0,
            press.Holds.DroppedDryKilograms(motion.Now),
            press.Holds.DroppedWetKilograms(motion.Now),
            motion.Now[parts.Layout.PressFiltered(index)],
            press.Description.FiltrateTo,
            press.Holds.DryGrams(_initial) / GramsPerKilogram,
            press.Holds.DryGrams(motion.Now) / GramsPerKilogram,
            press.Holds.DroppedLitres(motion.Now),
            press.Holds.Litres(_initial),
            press.Holds.Litres(motion.Now),
            press.Holds.WaterLitres(motion.Now),
            null,
            null))]);

    private LineLedger Line(int line)
    {
        Pipe pipe = parts.Pipes[line];
        FlowEnd to = pipe.ToTank >= 0 ? FlowEnd.Tank : FlowEnd.Outside;
        return new LineLedger(pipe.Description.Name, pipe.Description.From, FromEnd(pipe), pipe.Description.To, to, motion.Now[parts.Layout.Passed(line)], solids.KilogramsPassed(line));
    }

    private LineLedger Leak(TankBody tank) => new(
        $"leak of {tank.Description.Name}", tank.Description.Name, FlowEnd.Tank, "bund", FlowEnd.Outside, parts.LeakedLitres(tank.Index, motion.Now), solids.KilogramsLeaked(tank.Index));

    private FlowEnd FromEnd(Pipe pipe) => pipe.FromTank >= 0
        ? FlowEnd.Tank
        : parts.Sources[pipe.FromSource].Reagent is not null
            ? FlowEnd.Reagent
            : parts.Model.Supplies[pipe.FromSource].ToTreat ? FlowEnd.ToTreat : FlowEnd.Supply;

    private double VolumeLeft()
    {
        double now = 0.0;
        double before = 0.0;
        for (int tank = 0; tank < parts.Tanks.Length; tank++)
        {
            now += motion.Now[parts.Layout.Volume(tank)];
            before += _initial[parts.Layout.Volume(tank)];
        }

        foreach (DrumFilter drum in parts.Drums)
        {
            now += drum.Holds.HeldLitres(motion.Now);
            before += drum.Holds.HeldLitres(_initial);
        }

        foreach (FilterPress press in parts.Presses)
        {
            now += press.Holds.Litres(motion.Now);
            before += press.Holds.Litres(_initial);
        }

        double came = motion.Now[parts.Layout.CameIn];
        return Share(now + motion.Now[parts.Layout.WentOut] - before - came, before + came);
    }

    private double Left(ImmutableArray<int> together)
    {
        double now = Sum(together, content => Inventory(motion.Now, content));
        double before = Sum(together, content => Inventory(_initial, content));
        double came = Sum(together, content => motion.Now[parts.Layout.CameIn + 1 + content]);
        double went = Sum(together, content => motion.Now[parts.Layout.WentOut + 1 + content]);
        return Share(now + went - before - came, before + came);
    }

    private static double Sum(ImmutableArray<int> together, Func<int, double> of)
    {
        double sum = 0.0;
        foreach (int content in together)
        {
            sum += of(content);
        }

        return sum;
    }

    private double Inventory(ReadOnlySpan<double> state, int content)
    {
        double amount = 0.0;
        for (int tank = 0; tank < parts.Tanks.Length; tank++)
        {
            amount += state[parts.Layout.Mixed(tank) + content]
                + state[parts.Layout.OnTheWay(tank) + content]
                + state[parts.Layout.Mixing(tank) + content];
        }

        for (int line = 0; line < parts.DosingLines.Length; line++)
        {
            amount += state[parts.Layout.DosingLine(line) + content];
        }

        for (int settler = 0; settler < parts.Settlers.Length; settler++)
        {
            amount += state[parts.Layout.Bed(settler) + content];
        }

        for (int drum = 0; drum < parts.Drums.Length; drum++)
        {
            amount += state[parts.Layout.Held(drum) + content];
        }

        for (int press = 0; press < parts.Presses.Length; press++)
        {
            amount += state[parts.Layout.PressHeld(press) + content];
        }

        return amount;
    }

    private static double Share(double left, double throughput) => throughput > 0.0 ? left / throughput : left;
}
