namespace Sequencer.Control.Execution.Specialising;

/// <summary>Places in an array and the values that are known of them.</summary>
internal readonly record struct KnownValues(int[] Places, long[] Values)
{
    public void Write(long[] target)
    {
        for (int index = 0; index < Places.Length; index++)
        {
            target[Places[index]] = Values[index];
        }
    }

    /// <summary>The first place whose value is another one; -1 where there is none.</summary>
    public int FirstDifference(long[] values)
    {
        for (int index = 0; index < Places.Length; index++)
        {
            if (values[Places[index]] != Values[index])
            {
                return Places[index];
            }
        }

        return -1;
    }
}
