using Sequencer.Language.Programs;
using Sequencer.Language.Syntax;
using Sequencer.Language.Units;
using Sequencer.Text;

namespace Sequencer.Language.Binding;

/// <summary>Counts: amounts that change by a fixed step each time that something comes about.</summary>
internal sealed class CountBinder
{
    private const int MostParts = 100;

    private readonly BindingContext _context;
    private readonly AmountBinder _amounts;
    private readonly DeclarationBinder _declarations;

    public CountBinder(BindingContext context, AmountBinder amounts, DeclarationBinder declarations)
    {
        _context = context;
        _amounts = amounts;
        _declarations = declarations;
    }

    public Count? Bind(CountSyntax syntax, LinePlace place)
    {
        Condition? each = _declarations.Conditions.Bind(syntax.Each, place, new ConditionUse(false, false));
        Condition? set = _declarations.Conditions.BindOptional(syntax.Set?.When, place);
        CountWindow? window = Window(syntax.Window, place);
        if (_amounts.UnitOf(syntax.Unit, place) is not { } unit)
        {
            return null;
        }

        Rational? change = _amounts.Positive(syntax.Amount, unit.Dimension, place);
        Rational? value = syntax.Set is null ? Rational.Zero : _amounts.Value(syntax.Set.Value, unit.Dimension, place);
        if (Range(syntax, place, unit) is not var (low, high) || change is not { } step || value is not { } setTo || each is null
            || (set is null && syntax.Set is not null) || (window is null && syntax.Window is not null) || !Sound(syntax, place, low, high, step, setTo, unit))
        {
            return null;
        }

        Rational resolution = new[] { low, high, setTo }.Where(amount => !amount.IsZero).Select(Absolute).Aggregate(step, Rational.CommonMeasure);
        if (high / resolution * ((window?.Parts ?? 0) + 1) > Rational.FromInt64(int.MaxValue) || low / resolution < Rational.FromInt64(int.MinValue))
        {
            _context.Report(QuantityDiagnostics.TooLarge(place.At(syntax.Minimum).Cover(place.At(syntax.Maximum)), AmountText.Show(resolution, unit)));
            return null;
        }

        long steps = (step / resolution).ToInt64();
        return new Count(
            syntax.Name.Text,
            syntax.Description.Text,
            unit,
            resolution,
            (low / resolution).ToInt64(),
            (high / resolution).ToInt64(),
            each as EdgeFact ?? new EdgeFact(each, true, each.Span),
            syntax.Verb.Text == "takes" ? -steps : steps,
            (setTo / resolution).ToInt64(),
            set,
            window,
            place.At(syntax));
    }

    private (Rational Low, Rational High)? Range(CountSyntax syntax, LinePlace place, Unit unit)
    {
        if (syntax.Minimum.Value < syntax.Maximum.Value)
        {
            return (syntax.Minimum.Value * unit.Factor, syntax.Maximum.Value * unit.Factor);
        }

        _context.Report(QuantityDiagnostics.EmptyRange(place.At(syntax.Minimum).Cover(place.At(syntax.Maximum))));
        return null;
    }

    private bool Sound(CountSyntax syntax, LinePlace place, Rational low, Rational high, Rational step, Rational setTo, Unit unit)
    {
        string range = $"{AmountText.Show(low, unit)} to {AmountText.Show(high, unit)}";
        Diagnostic? mistake =
            syntax.Set is { } set && (setTo < low || setTo > high) ? CountDiagnostics.SetOutside(place.At(set.Value), syntax.Name.Text, range)
            : step > high - low ? CountDiagnostics.StepBeyondRange(place.At(syntax.Amount), syntax.Name.Text, range)
            : syntax.Window is { } window && (syntax.Set is not null || syntax.Verb.Text == "takes" || !low.IsZero) ? CountDiagnostics.WindowOnlyAdds(place.At(window))
            : null;
        if (mistake is not null)
        {
            _context.Report(mistake);
        }

        return mistake is null;
    }

    private CountWindow? Window(CountWindowSyntax? syntax, LinePlace place)
    {
        if (syntax is null || _amounts.Time(syntax.Time, place) is not { } time || _amounts.Count(syntax.Parts, 2, MostParts, place) is not int parts)
        {
            return null;
        }

        return new CountWindow(time, parts, place.At(syntax));
    }

    private static Rational Absolute(Rational value) => value.Sign < 0 ? -value : value;
}
