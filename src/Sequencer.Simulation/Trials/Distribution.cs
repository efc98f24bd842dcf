namespace Sequencer.Simulation.Trials;

/// <summary>The values that an outcome took, in order; those that are no numbers are only counted.</summary>
public sealed class Distribution
{
    private readonly double[] _ordered;

    public Distribution(IReadOnlyList<double> values)
    {
        _ordered = [.. values.Where(double.IsFinite).Order()];
        Without = values.Count - _ordered.Length;
    }

    public int Count => _ordered.Length;

    /// <summary>Runs in which there was no value, as the time of a batch that was not finished.</summary>
    public int Without { get; }

    public double Lowest => At(0);

    public double Median => At(0.5);

    public double Highest => At(1);

    public IReadOnlyList<double> Ordered => _ordered;

    /// <summary>The value below which a share of the values lies, on a straight line between neighbours; not a number where there is none.</summary>
    public double At(double share)
    {
        if (_ordered.Length == 0)
        {
            return double.NaN;
        }

        double place = share * (_ordered.Length - 1);
        int below = (int)Math.Floor(place);
        double rest = place - below;
        return rest == 0 ? _ordered[below] : _ordered[below] + (rest * (_ordered[below + 1] - _ordered[below]));
    }
}
