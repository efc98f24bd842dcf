using Sequencer.Language.Programs;
using Sequencer.Language.Syntax;
using Sequencer.Language.Units;

namespace Sequencer.Language.Binding;

/// <summary>Analogue outputs, and the values that steps give them: on their steps and inside their ranges.</summary>
internal sealed class AnalogueOutputBinder
{
    private readonly BindingContext _context;
    private readonly AmountBinder _amounts;
    private readonly DeclarationBinder _declarations;
    private readonly AddressBinder _addresses;

    public AnalogueOutputBinder(BindingContext context, AmountBinder amounts, DeclarationBinder declarations, AddressBinder addresses)
    {
        _context = context;
        _amounts = amounts;
        _declarations = declarations;
        _addresses = addresses;
    }

    public AnalogueOutput? Bind(AnalogueOutputSyntax syntax, LinePlace place)
    {
        DirectAddress address = _addresses.Bind(syntax.Address, 'Q', "WD", place, "an output word such as `%QW0`");
        if (_amounts.UnitOf(syntax.Unit, place) is not { } unit)
        {
            return null;
        }

        Rational resolution = unit.Factor / new Rational(System.Numerics.BigInteger.Pow(10, Math.Max(syntax.Minimum.Decimals, syntax.Maximum.Decimals)), 1);
        Text.SourceSpan span = place.At(syntax.Minimum).Cover(place.At(syntax.Maximum));
        if (syntax.Minimum.Value >= syntax.Maximum.Value)
        {
            _context.Report(QuantityDiagnostics.EmptyRange(span));
            return null;
        }

        Rational low = syntax.Minimum.Value * unit.Factor / resolution;
        Rational high = syntax.Maximum.Value * unit.Factor / resolution;
        if (high - low > AmountBinder.LargestSpan || high > int.MaxValue || low < int.MinValue)
        {
            _context.Report(QuantityDiagnostics.TooLarge(span, AmountText.Show(resolution, unit)));
            return null;
        }

        AnalogueOutput output = new(
            syntax.Name.Text, syntax.Description.Text, unit, resolution, low.ToInt64(), high.ToInt64(), address, low.ToInt64(), low.ToInt64(), null, place.At(syntax));
        long? safe = Value(output, syntax.Safe, place);
        long? emergency = syntax.Emergency is null ? safe : Value(output, syntax.Emergency, place);
        long? most = syntax.Rate is null ? null : MostAScan(output, syntax.Rate, place);
        return safe is null || emergency is null ? null : output with { Safe = safe.Value, Emergency = emergency.Value, MostAScan = most };
    }

    public SetAction? Bind(SetSyntax syntax, LinePlace place)
    {
        AnalogueOutput? output = _declarations.ResolveAnalogueOutput(syntax.Name, place);
        List<WrittenLiteral> literals = [];
        if (_declarations.Quantities.Bind(place, default, literals, syntax.Value) is not [{ } value] || output is null)
        {
            return null;
        }

        if (value.Dimension != output.Unit.Dimension)
        {
            _context.Report(QuantityDiagnostics.WrongDimension(value.Span, value.Dimension, output.Unit.Dimension));
            return null;
        }

        switch (value)
        {
            case LiteralQuantity literal:
                return _declarations.Checks.OnStep(literals[0], output.Resolution) && Inside(output, literal.Value / output.Resolution, literal.Value / output.Resolution, value.Span)
                    ? new SetAction(output, value, place.At(syntax))
                    : null;
            case ParameterQuantity { Parameter: var parameter } when (parameter.Resolution / output.Resolution).IsInteger:
                Rational factor = parameter.Resolution / output.Resolution;
                return Inside(output, factor * parameter.Minimum, factor * parameter.Maximum, value.Span) ? new SetAction(output, value, place.At(syntax)) : null;
            default:
                _context.Report(StepActionDiagnostics.NoSetValue(value.Span, AmountText.Show(output.Resolution, output.Unit)));
                return null;
        }
    }

    public RampAction? Bind(RampSyntax syntax, LinePlace place)
    {
        Duration? time = _amounts.Time(syntax.Time, place);
        if (_declarations.ResolveAnalogueOutput(syntax.Name, place) is not { } output)
        {
            return null;
        }

        long? start = Value(output, syntax.From, place);
        long? end = Value(output, syntax.To, place);
        return time is null || start is null || end is null ? null : new RampAction(output, start.Value, end.Value, time.Value, place.At(syntax));
    }

    /// <summary>The amount in steps of the output.</summary>
    private long? Value(AnalogueOutput output, AmountSyntax amount, LinePlace place)
    {
        if (_amounts.Value(amount, output.Unit.Dimension, place) is not { } value)
        {
            return null;
        }

        LiteralQuantity literal = new(value, output.Unit.Dimension, place.At(amount));
        Unit? unit = amount.Unit is null ? null : UnitTable.Find(amount.Unit.Text);
        Rational steps = value / output.Resolution;
        return _declarations.Checks.OnStep(new WrittenLiteral(literal, unit), output.Resolution) && Inside(output, steps, steps, literal.Span) ? steps.ToInt64() : null;
    }

    private bool Inside(AnalogueOutput output, Rational low, Rational high, Text.SourceSpan span)
    {
        if (low >= output.Minimum && high <= output.Maximum)
        {
            return true;
        }

        string range = $"{AmountText.Show(output.Resolution * output.Minimum, output.Unit)} to {AmountText.Show(output.Resolution * output.Maximum, output.Unit)}";
        _context.Report(StepActionDiagnostics.OutsideOutput(span, output.Tag, range));
        return false;
    }

    private long? MostAScan(AnalogueOutput output, RateSyntax rate, LinePlace place)
    {
        Rational? change = _amounts.Positive(rate.Change, output.Unit.Dimension, place);
        Duration? time = _amounts.Time(rate.Time, place);
        if (change is not { } way || time is not { } length)
        {
            return null;
        }

        long steps = (long)(way / output.Resolution * _context.ScanMilliseconds / length.Milliseconds).Floor();
        if (steps == 0)
        {
            _context.Report(StepActionDiagnostics.SlowerThanAStep(place.At(rate), AmountText.Show(output.Resolution, output.Unit), _context.ScanMilliseconds));
            return null;
        }

        return Math.Min(steps, output.Maximum - output.Minimum);
    }
}
