using Sequencer.Plant.Description;

namespace Sequencer.Plant.Reaction;

/// <summary>Carries a tank's water to another tank or outside: liquid, heat and contents go together, solids as they stand where it is drawn.</summary>
/// <param name="layout">of the state</param>
/// <param name="settling">of each tank; null where nothing settles</param>
internal sealed class TankTransfer(StateLayout layout, TankSettling?[] settling)
{
    /// <summary>Adds what so many L/s from a point in a tank to another (-1 for outside) do.</summary>
    public void AddRates(int from, DrawPoint point, int to, double flow, ReadOnlySpan<double> state, Span<double> rates)
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

        if (settling[from] is { } solids)
        {
            solids.Draw(point, flow, target, state, rates);
            return;
        }

        int source = layout.Mixed(from);
        Amounts.Move(state.Slice(source, layout.Contents), share, rates.Slice(source, layout.Contents), rates.Slice(target, layout.Contents));
    }
}
