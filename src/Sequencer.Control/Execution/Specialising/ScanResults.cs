namespace Sequencer.Control.Execution.Specialising;

/// <summary>The results of a specialised scan for one array: those known beforehand, and those that it computes.</summary>
internal readonly record struct ScanResults(int[] KnownPlaces, long[] KnownValues, Move[] Computed)
{
    public void Write(long[] results, long[] registers, bool knownAreThere)
    {
        if (!knownAreThere)
        {
            for (int index = 0; index < KnownPlaces.Length; index++)
            {
                results[KnownPlaces[index]] = KnownValues[index];
            }
        }

        foreach (ref readonly Move move in Computed.AsSpan())
        {
            results[move.To] = registers[move.From];
        }
    }
}
