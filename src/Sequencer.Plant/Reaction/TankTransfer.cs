namespace Sequencer.Plant.Reaction;

/// <summary>Carries a tank's water to another tank or outside: liquid, heat and contents go together.</summary>
internal sealed class TankTransfer(StateLayout layout)
{
    /// <summary>Adds what so many L/s from a tank to another (-1 for outside) do.</summary>
    public void AddRates(int from, int to, double flow, ReadOnlySpan<double> state, Span<double> rates)
    {
        double share = flow / state[layout.Volume(from)];
        double heat = share * state[layout.Heat(from)];
        rates[layout.Volume(from)] -= flow;
        rates[layout.Heat(from)] -= heat;
        int target = layout.WentOut + 1;
        if (to >= 0)
        {
            target = layout.Mixed(to);
            rates[layout.Volume(to)] += flow;
            rates[layout.Heat(to)] += heat;
        }
        else
        {
            rates[layout.WentOut] += flow;
        }

        int source = layout.Mixed(from);
        for (int content = 0; content < layout.Contents; content++)
        {
            double amount = share * state[source + content];
            rates[source + content] -= amount;
            rates[target + content] += amount;
        }
    }
}
