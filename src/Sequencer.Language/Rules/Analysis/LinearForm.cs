using System.Globalization;
using Sequencer.Language.Programs;
using Sequencer.Language.Units;

namespace Sequencer.Language.Rules.Analysis;

/// <summary>A sum in base units: a constant and each reading, parameter and total with its factor (never zero).</summary>
internal sealed class LinearForm
{
    private readonly SortedDictionary<string, LinearTerm> _terms = new(StringComparer.Ordinal);

    private LinearForm()
    {
    }

    public Rational Constant { get; private set; }

    public IReadOnlyCollection<LinearTerm> Terms => _terms.Values;

    /// <summary>Equal for equal sums, however they are written.</summary>
    public string Key => string.Join(
        '+',
        _terms.Select(term => string.Create(CultureInfo.InvariantCulture, $"{term.Value.Factor}*{term.Key}")).Append(Constant.ToString()));

    public static LinearForm Of(Quantity quantity) => Difference(quantity, null);

    /// <summary><paramref name="left"/> less <paramref name="right"/>.</summary>
    public static LinearForm Difference(Quantity left, Quantity? right)
    {
        LinearForm form = new();
        Stack<(Quantity Quantity, int Sign)> open = new([(left, 1)]);
        if (right is not null)
        {
            open.Push((right, -1));
        }

        while (open.TryPop(out (Quantity Quantity, int Sign) top))
        {
            if (top.Quantity is SumQuantity sum)
            {
                open.Push((sum.Left, top.Sign));
                open.Push((sum.Right, sum.Subtract ? -top.Sign : top.Sign));
            }
            else
            {
                form.Add(top.Quantity, top.Sign);
            }
        }

        return form;
    }

    /// <summary>
    /// The least and the greatest value over all settings of the parameters, leaving out
    /// <paramref name="beside"/>; null where another reading or a total counts.
    /// </summary>
    public (Rational Low, Rational High)? Bounds(LinearTerm? beside = null)
    {
        Rational low = Constant;
        Rational high = Constant;
        foreach (LinearTerm term in Terms)
        {
            if (term == beside)
            {
                continue;
            }

            if (term.Leaf is not ParameterQuantity { Parameter: Parameter parameter })
            {
                return null;
            }

            Rational first = term.Factor * parameter.Resolution * parameter.Minimum;
            Rational second = term.Factor * parameter.Resolution * parameter.Maximum;
            low += first < second ? first : second;
            high += first < second ? second : first;
        }

        return (low, high);
    }

    private void Add(Quantity leaf, int sign)
    {
        if (leaf is LiteralQuantity literal)
        {
            Constant += literal.Value * sign;
            return;
        }

        string name = leaf switch
        {
            ReadingQuantity reading => reading.Input.Tag,
            ParameterQuantity parameter => parameter.Parameter.Name,
            TotalQuantity total => total.Output.Tag + ".total",
            CountQuantity count => count.Count.Name,
            RealQuantity real => real.Real.Name,
            _ => throw new ArgumentOutOfRangeException(nameof(leaf), leaf.GetType().Name, "no such quantity"),
        };
        Rational factor = sign + (_terms.TryGetValue(name, out LinearTerm term) ? term.Factor : Rational.Zero);
        if (factor.IsZero)
        {
            _terms.Remove(name);
        }
        else
        {
            _terms[name] = new LinearTerm(leaf, factor);
        }
    }
}
