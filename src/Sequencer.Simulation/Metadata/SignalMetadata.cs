namespace Sequencer.Simulation.Metadata;

/// <summary>
/// What a variable's integers mean: <see cref="Resolution"/> of <see cref="Unit"/> each (0.001 of m3
/// for litres). A switch or output has the unit "" and the resolution 1.
/// <see cref="Default"/>, in the unit, is a parameter's value before anyone sets it.
/// </summary>
public sealed record SignalMetadata(
    string Tag,
    SignalKind Kind,
    string Unit,
    decimal Resolution,
    string Description,
    decimal? Default = null)
{
    /// <summary>The ends of an analogue output, in steps of the resolution; null for anything else.</summary>
    public (long Low, long High)? Range { get; init; }

    /// <summary>More decimals than this tell a reader nothing; a total moves in thirds of a millilitre.</summary>
    private const int MostDecimals = 4;

    /// <summary>How many decimals show one step of the resolution.</summary>
    public int Decimals
    {
        get
        {
            int decimals = 0;
            for (decimal step = Resolution; step != decimal.Truncate(step) && decimals < MostDecimals; step *= 10)
            {
                decimals++;
            }

            return decimals;
        }
    }
}
