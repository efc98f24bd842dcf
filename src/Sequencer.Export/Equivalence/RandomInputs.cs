using System.Collections.Immutable;
using Sequencer.Control.TransitionSystems;

namespace Sequencer.Export.Equivalence;

/// <summary>
/// Inputs that look a little like a plant's: most stay as they are, an integer walks in small steps or jumps,
/// a bound now and then. Values of one input in different scans would be unlike any plant and let no timer run.
/// </summary>
internal sealed class RandomInputs
{
    private const int PercentChanged = 4;
    private const int PercentWalked = 60;
    private const int PercentBound = 20;

    /// <summary>Power comes back once in so many scans on the average, and for one scan.</summary>
    private const int ScansBetweenReturnsOfPower = 1000;
    private const string PowerReturned = "power.returned";

    private readonly Random _random;
    private readonly ImmutableArray<Variable> _variables;
    private readonly long[] _values;

    public RandomInputs(ImmutableArray<Variable> variables, int seed)
    {
        _random = new Random(seed);
        _variables = variables;
        _values = [.. variables.Select(variable => Math.Clamp(0, variable.Range.Minimum, variable.Range.Maximum))];
    }

    /// <summary>The next scan's values, in the order of the variables.</summary>
    public ReadOnlySpan<long> Next()
    {
        for (int index = 0; index < _values.Length; index++)
        {
            if (_variables[index].Name == PowerReturned)
            {
                _values[index] = _random.Next(ScansBetweenReturnsOfPower) == 0 ? 1 : 0;
            }
            else if (_random.Next(100) < PercentChanged)
            {
                _values[index] = Changed(_variables[index].Range, _values[index]);
            }
        }

        return _values;
    }

    private long Changed(IntegerRange range, long value)
    {
        int kind = _random.Next(100);
        if (range.Maximum - range.Minimum == 1)
        {
            return range.Minimum + range.Maximum - value;
        }

        if (kind < PercentBound)
        {
            return _random.Next(2) == 0 ? range.Minimum : range.Maximum;
        }

        long step = Math.Max(1, (range.Maximum - range.Minimum) / 100);
        return kind < PercentBound + PercentWalked
            ? Math.Clamp(value + _random.NextInt64(-step, step + 1), range.Minimum, range.Maximum)
            : _random.NextInt64(range.Minimum, range.Maximum == long.MaxValue ? long.MaxValue : range.Maximum + 1);
    }
}
