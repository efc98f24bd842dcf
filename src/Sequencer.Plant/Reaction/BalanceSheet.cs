namespace Sequencer.Plant.Reaction;

/// <summary>Holds what is there now, what was there and what came and went against each other.</summary>
internal sealed class BalanceSheet(PlantParts parts, PlantMotion motion)
{
    private readonly double[] _initial = motion.Now.ToArray();

    public PlantBalances Draw()
    {
        double worst = 0.0;
        string name = "";
        for (int content = 0; content < parts.Contents.Count; content++)
        {
            // What turns into something else, as lime into calcium, makes one balance with it.
            if (parts.Contents.TurnsInto(content) >= 0)
            {
                continue;
            }

            int partner = PartnerOf(content);
            double left = Left(content, partner);
            if (Math.Abs(left) > Math.Abs(worst))
            {
                (worst, name) = (left, parts.Contents.Names[content]);
            }
        }

        return new PlantBalances(VolumeLeft(), worst, name, motion.ChargeImbalance());
    }

    private int PartnerOf(int content)
    {
        for (int other = 0; other < parts.Contents.Count; other++)
        {
            if (parts.Contents.TurnsInto(other) == content)
            {
                return other;
            }
        }

        return -1;
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

        double came = motion.Now[parts.Layout.CameIn];
        return Share(now + motion.Now[parts.Layout.WentOut] - before - came, before + came);
    }

    private double Left(int content, int partner)
    {
        double now = Inventory(motion.Now, content) + Inventory(motion.Now, partner);
        double before = Inventory(_initial, content) + Inventory(_initial, partner);
        double came = Boundary(parts.Layout.CameIn, content) + Boundary(parts.Layout.CameIn, partner);
        double went = Boundary(parts.Layout.WentOut, content) + Boundary(parts.Layout.WentOut, partner);
        return Share(now + went - before - came, before + came);
    }

    private double Inventory(ReadOnlySpan<double> state, int content)
    {
        double amount = 0.0;
        if (content < 0)
        {
            return amount;
        }

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

        return amount;
    }

    private double Boundary(int first, int content) => content < 0 ? 0.0 : motion.Now[first + 1 + content];

    private static double Share(double left, double throughput) => throughput > 0.0 ? left / throughput : left;
}
