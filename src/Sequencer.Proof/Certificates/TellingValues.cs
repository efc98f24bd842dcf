using System.Collections.Immutable;
using Sequencer.Control.TransitionSystems;

namespace Sequencer.Proof.Certificates;

/// <summary>Random values of which many are at an end of their range or beside a constant that values are compared with: there a wrong comparison shows.</summary>
internal sealed class TellingValues(IEnumerable<Expression> roots)
{
    private readonly ImmutableArray<long> _landmarks =
    [
        .. ExpressionGraph.InOrder(roots)
            .Where(static expression => expression.IsConstant && expression.Sort == Sort.Integer)
            .Select(static expression => expression.Value)
            .Append(0)
            .Distinct(),
    ];

    private readonly Random _random = new(1);

    public void Fill(long[] values, Func<int, IntegerRange> rangeOf)
    {
        for (int index = 0; index < values.Length; index++)
        {
            IntegerRange range = rangeOf(index);
            values[index] = _random.Next(4) switch
            {
                0 => range.Minimum,
                1 => range.Maximum,
                2 => Math.Clamp(_landmarks[_random.Next(_landmarks.Length)] + _random.Next(-1, 2), range.Minimum, range.Maximum),
                _ => _random.NextInt64(range.Minimum, range.Maximum == long.MaxValue ? long.MaxValue : range.Maximum + 1),
            };
        }
    }

    public long[] Drawn(int count, Func<int, IntegerRange> rangeOf)
    {
        long[] values = new long[count];
        Fill(values, rangeOf);
        return values;
    }
}
