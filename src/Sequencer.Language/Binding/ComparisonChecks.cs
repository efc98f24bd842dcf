using Sequencer.Language.Programs;
using Sequencer.Language.Units;
using Sequencer.Text;

namespace Sequencer.Language.Binding;

/// <summary>Whether a comparison can be either true or false, on the steps its readings come in, in 32 bits.</summary>
internal sealed class ComparisonChecks
{
    private readonly BindingContext _context;

    public ComparisonChecks(BindingContext context) => _context = context;

    public void Compare(Quantity left, Comparison comparison, Quantity right, SourceSpan span, List<WrittenLiteral> literals)
    {
        LinearForm difference = LinearForm.Difference(_context, left, right);
        if (!Fits(difference, span, literals))
        {
            return;
        }

        if (Constant(difference, comparison) is bool value)
        {
            _context.Report(QuantityDiagnostics.AlwaysSame(span, value, Ranges(left, right)));
            return;
        }

        Inside(left, right);
        Inside(right, left);
    }

    public void Within(Quantity value, Quantity lower, Quantity upper, SourceSpan span, List<WrittenLiteral> literals)
    {
        LinearForm aboveLower = LinearForm.Difference(_context, value, lower);
        LinearForm belowUpper = LinearForm.Difference(_context, value, upper);
        if (!Fits(aboveLower, span, literals) || !Fits(belowUpper, span, literals))
        {
            return;
        }

        if (LinearForm.Difference(_context, upper, lower).Range().Low.Sign < 0)
        {
            _context.Report(QuantityDiagnostics.EmptyBand(lower.Span.Cover(upper.Span)));
            return;
        }

        bool? low = Constant(aboveLower, Comparison.GreaterOrEqual);
        bool? high = Constant(belowUpper, Comparison.LessOrEqual);
        if (low == false || high == false || (low == true && high == true))
        {
            _context.Report(QuantityDiagnostics.AlwaysSame(span, low == true && high == true, Ranges(value, lower)));
            return;
        }

        Inside(value, lower);
        Inside(value, upper);
    }

    /// <summary>A target that a reading is moved toward: on its steps and inside its range.</summary>
    public void Target(Quantity reading, Quantity target, List<WrittenLiteral> literals)
    {
        LinearForm difference = LinearForm.Difference(_context, reading, target);
        if (!Fits(difference, target.Span, literals))
        {
            return;
        }

        if (difference.Range() is var (low, high) && (low.Sign >= 0 || high.Sign <= 0))
        {
            _context.Report(QuantityDiagnostics.AlwaysSame(target.Span, false, Ranges(reading, target)));
            return;
        }

        Inside(reading, target);
    }

    /// <summary>Literals on the steps of the readings and parameters beside them, and all of it in 32 bits.</summary>
    private bool Fits(LinearForm difference, SourceSpan span, List<WrittenLiteral> literals)
    {
        if (difference.HasTotal || difference.Step is not { } step)
        {
            return true;
        }

        foreach (WrittenLiteral literal in literals)
        {
            if (!OnStep(literal, step))
            {
                return false;
            }
        }

        if (difference.Magnitude() / step > Rational.FromInt64(int.MaxValue))
        {
            _context.Report(QuantityDiagnostics.TooLarge(span, AmountText.Show(step, difference.Unit)));
            return false;
        }

        return true;
    }

    /// <summary>Whether the literal is a whole number of steps; if not, that is reported.</summary>
    public bool OnStep(WrittenLiteral literal, Rational step)
    {
        Rational steps = literal.Quantity.Value / step;
        if (steps.IsInteger)
        {
            return true;
        }

        string below = AmountText.Show(step * new Rational(steps.Floor(), 1), literal.Unit);
        string above = AmountText.Show(step * new Rational(steps.Ceiling(), 1), literal.Unit);
        _context.Report(QuantityDiagnostics.OffResolution(literal.Quantity.Span, AmountText.Show(step, literal.Unit), below, above));
        return false;
    }

    /// <summary>A parameter's whole range must lie where the instrument reads.</summary>
    private void Inside(Quantity reading, Quantity setting)
    {
        LinearForm read = LinearForm.Of(_context, reading);
        LinearForm set = LinearForm.Of(_context, setting);
        if (!read.HasReading || read.HasParameter || read.HasTotal || !set.HasParameter || set.HasReading || set.HasTotal)
        {
            return;
        }

        (Rational readLow, Rational readHigh) = read.Range();
        (Rational setLow, Rational setHigh) = set.Range();
        if (setLow < readLow || setHigh > readHigh)
        {
            _context.Report(QuantityDiagnostics.PartlyOutside(
                setting.Span,
                Between(setLow, setHigh, set.Unit),
                $"`{reading.Span.Text}` reads {Between(readLow, readHigh, read.Unit)}"));
        }
    }

    private static bool? Constant(LinearForm difference, Comparison comparison)
    {
        (Rational low, Rational high) = difference.Range();
        return comparison switch
        {
            Comparison.Less => high.Sign < 0 ? true : low.Sign >= 0 ? false : null,
            Comparison.LessOrEqual => high.Sign <= 0 ? true : low.Sign > 0 ? false : null,
            Comparison.Greater => low.Sign > 0 ? true : high.Sign <= 0 ? false : null,
            Comparison.GreaterOrEqual => low.Sign >= 0 ? true : high.Sign < 0 ? false : null,
            _ => throw new System.Diagnostics.UnreachableException($"comparison {comparison}"),
        };
    }

    private string Ranges(Quantity left, Quantity right)
    {
        LinearForm leftForm = LinearForm.Of(_context, left);
        LinearForm rightForm = LinearForm.Of(_context, right);
        if (!leftForm.HasVariables && !rightForm.HasVariables)
        {
            return "it compares two fixed amounts";
        }

        return string.Join(", ", new[] { (Quantity: left, Form: leftForm), (Quantity: right, Form: rightForm) }
            .Where(side => side.Form.HasVariables)
            .Select(side => $"`{side.Quantity.Span.Text}` is {(side.Form.HasTotal ? "never below nothing" : Between(side.Form.Range().Low, side.Form.Range().High, side.Form.Unit))}"));
    }

    private static string Between(Rational low, Rational high, Unit? unit) => $"{AmountText.Show(low, unit)} to {AmountText.Show(high, unit)}";
}
