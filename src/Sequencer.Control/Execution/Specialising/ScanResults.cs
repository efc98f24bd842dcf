namespace Sequencer.Control.Execution.Specialising;

/// <summary>The results of a specialised scan for one array: those known beforehand, and those that it computes.</summary>
internal readonly record struct ScanResults(KnownValues Known, Move[] Computed)
{
    public void Write(long[] results, long[] registers, bool knownAreThere)
    {
        if (!knownAreThere)
        {
            Known.Write(results);
        }

        foreach (ref readonly Move move in Computed.AsSpan())
        {
            results[move.To] = registers[move.From];
        }
    }
}
