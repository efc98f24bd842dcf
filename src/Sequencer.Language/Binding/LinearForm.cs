using Sequencer.Language.Programs;
using Sequencer.Language.Units;

namespace Sequencer.Language.Binding;

/// <summary>
/// A quantity as constant plus multiples of independent variables, so that what stands on both sides
/// of a comparison cancels and the range of the rest is exact.
/// </summary>
internal sealed class LinearForm
{
    private const long LargestInteger = int.MaxValue;
    private readonly Dictionary<string, Variable> _variables = new(StringComparer.Ordinal);
    private readonly BindingContext _context;
    private Rational _constant;

    private LinearForm(BindingContext context) => _context = context;

    /// <summary>Left minus right.</summary>
    public static LinearForm Difference(BindingContext context, Quantity left, Quantity right)
    {
        LinearForm form = new(context);
        form.Add(left, 1);
        form.Add(right, -1);
        return form;
    }

    public static LinearForm Of(BindingContext context, Quantity quantity)
    {
        LinearForm form = new(context);
        form.Add(quantity, 1);
        return form;
    }

    public bool HasReading { get; private set; }

    public bool HasParameter { get; private set; }

    public bool HasTotal { get; private set; }

    public bool HasVariables => HasReading || HasParameter || HasTotal;

    /// <summary>A unit that one of the variables is declared in.</summary>
    public Unit? Unit { get; private set; }

    /// <summary>The largest amount of which every reading and parameter is a whole multiple; null without any.</summary>
    public Rational? Step { get; private set; }

    public (Rational Low, Rational High) Range()
    {
        (Rational low, Rational high) = (_constant, _constant);
        foreach (Variable variable in _variables.Values)
        {
            Rational first = variable.Factor * variable.Low;
            Rational second = variable.Factor * variable.High;
            low += first < second ? first : second;
            high += first < second ? second : first;
        }

        return (low, high);
    }

    /// <summary>The sum of the largest magnitudes: no partial sum is larger.</summary>
    public Rational Magnitude()
    {
        Rational sum = Absolute(_constant);
        foreach (Variable variable in _variables.Values)
        {
            Rational low = Absolute(variable.Factor * variable.Low);
            Rational high = Absolute(variable.Factor * variable.High);
            sum += low > high ? low : high;
        }

        return sum;
    }

    private void Add(Quantity quantity, int sign)
    {
        Stack<(Quantity Quantity, int Sign)> open = new([(quantity, sign)]);
        while (open.TryPop(out (Quantity Quantity, int Sign) next))
        {
            switch (next.Quantity)
            {
                case LiteralQuantity literal:
                    _constant += literal.Value * next.Sign;
                    break;
                case SumQuantity sum:
                    open.Push((sum.Right, sum.Subtract ? -next.Sign : next.Sign));
                    open.Push((sum.Left, next.Sign));
                    break;
                case ReadingQuantity { Input: { } input }:
                    HasReading = true;
                    AddVariable(input.Tag, next.Sign, input.Resolution * input.Minimum, input.Resolution * input.Maximum, input.Resolution, input.Unit);
                    break;
                case ParameterQuantity { Parameter: { } parameter }:
                    HasParameter = true;
                    AddVariable(parameter.Name, next.Sign, parameter.Resolution * parameter.Minimum, parameter.Resolution * parameter.Maximum, parameter.Resolution, parameter.Unit);
                    break;
                case TotalQuantity { Output: { } output }:
                    HasTotal = true;
                    Rational highest = _context.LitresPerScan(output.Delivery?.LitresPerSecond ?? Rational.Zero) * LargestInteger;
                    AddVariable(output.Tag + ".total", next.Sign, Rational.Zero, highest, null, UnitTable.Find("L"));
                    break;
                case CountQuantity { Count: { } count }:
                    AddVariable(count.Name, next.Sign, count.Resolution * count.Minimum, count.Resolution * count.Largest, count.Resolution, count.Unit);
                    break;
                case RealQuantity { Real: { } real }:
                    AddVariable(real.Name, next.Sign, real.Input.Resolution * real.Minimum, real.Input.Resolution * real.Maximum, real.Input.Resolution, real.Input.Unit);
                    break;
                default:
                    throw new System.Diagnostics.UnreachableException(next.Quantity.GetType().Name);
            }
        }
    }

    private void AddVariable(string name, int sign, Rational low, Rational high, Rational? step, Unit? unit)
    {
        Unit ??= unit;
        if (step is { } amount)
        {
            Step = Step is { } known ? Rational.CommonMeasure(known, amount) : amount;
        }

        Rational factor = _variables.TryGetValue(name, out Variable before) ? before.Factor + sign : sign;
        _variables[name] = new Variable(factor, low, high);
    }

    private static Rational Absolute(Rational value) => value.Sign < 0 ? -value : value;

    private readonly record struct Variable(Rational Factor, Rational Low, Rational High);
}
