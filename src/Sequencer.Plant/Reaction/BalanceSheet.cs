using System.Collections.Immutable;

namespace Sequencer.Plant.Reaction;

/// <summary>Holds what is there now, what was there and what came and went against each other.</summary>
internal sealed class BalanceSheet(PlantParts parts, PlantMotion motion)
{
    private readonly double[] _initial = motion.Now.ToArray();
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

        return new PlantBalances(VolumeLeft(), worst, name, motion.ChargeImbalance());
    }

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
