using System.Collections.Immutable;

namespace Sequencer.Simulation.Loop;

/// <summary>
/// The inputs of a run without the plant: what each is at rest, and the changes, in the order of their scans, from 0.
/// </summary>
internal sealed class InputScript(ImmutableArray<long> rests, ImmutableArray<(long Scan, int Input, long Value)> changes)
{
    private int _done;

    /// <summary>Gives the inputs the values that they have from this scan on; scans come in order.</summary>
    public void Set(long scan, long[] inputs)
    {
        if (scan == 0)
        {
            rests.CopyTo(inputs);
        }

        for (; _done < changes.Length && changes[_done].Scan <= scan; _done++)
        {
            inputs[changes[_done].Input] = changes[_done].Value;
        }
    }
}
