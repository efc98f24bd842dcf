namespace Sequencer.Plant.Response;

/// <summary>A figure found from a record, and how sure it is.</summary>
/// <param name="Value">The figure.</param>
/// <param name="StandardError">Its standard error.</param>
public sealed record Estimate(double Value, double StandardError)
{
    /// <summary>A range reaches so many standard errors to both sides: 95 % of what chance does to a figure with a normal error (any textbook of statistics).</summary>
    public const double ErrorsOfRange = 2.0;

    private const double LargestShare = 0.5;

    /// <summary>False where the search for it ended at the end of what is searched: it may lie beyond.</summary>
    public bool IsFound { get; init; } = true;

    /// <summary>False where the standard error is more than half of the figure: its range then holds nought, and its double. The rule is ours.</summary>
    public bool IsDetermined => IsFound && StandardError <= LargestShare * Math.Abs(Value);

    /// <summary>No less than nought where the figure is not: the figures here are times and sizes.</summary>
    public double Low => Math.Max(Math.Min(Value, 0.0), Value - (ErrorsOfRange * StandardError));

    public double High => Value + (ErrorsOfRange * StandardError);
}
