using System.Collections.Immutable;
using Sequencer.Language.Programs;
using Sequencer.Language.Syntax;
using Sequencer.Language.Units;

namespace Sequencer.Language.Binding;

/// <summary>What is truly so beside a reading: its range, how well the reading shows it, how fast it can change.</summary>
internal sealed class RealBinder
{
    private readonly BindingContext _context;
    private readonly AmountBinder _amounts;
    private readonly DeclarationBinder _declarations;

    public RealBinder(BindingContext context, AmountBinder amounts, DeclarationBinder declarations)
    {
        _context = context;
        _amounts = amounts;
        _declarations = declarations;
    }

    public Real? Bind(RealSyntax syntax, LinePlace place)
    {
        AnalogueInput? input = _declarations.ResolveReading(syntax.Signal, place);
        if (input is null || _amounts.UnitOf(syntax.Unit, place) is not { } unit)
        {
            return null;
        }

        if (unit.Dimension != input.Unit.Dimension)
        {
            _context.Report(QuantityDiagnostics.UnlikeDimensions(place.At(syntax.Unit), unit.Dimension, input.Unit.Dimension, input.Tag));
            return null;
        }

        Rational? within = _amounts.Positive(syntax.Within, input.Unit.Dimension, place);
        ImmutableArray<RealRate>? rates = Rates(syntax, input, place);
        long? low = Steps(syntax.Minimum.Value * unit.Factor, input);
        long? high = Steps(syntax.Maximum.Value * unit.Factor, input);
        long? tolerance = within is { } amount ? Steps(amount, input) : null;
        if (within is not null && (low is null || high is null || tolerance is null))
        {
            _context.Report(CountDiagnostics.RealOffResolution(place.At(syntax), input.Tag, AmountText.Show(input.Resolution, input.Unit)));
            return null;
        }

        if (low >= high)
        {
            _context.Report(QuantityDiagnostics.EmptyRange(place.At(syntax.Minimum).Cover(place.At(syntax.Maximum))));
            return null;
        }

        return low is long least && high is long most && tolerance is long steps && rates is { } all
            ? new Real(syntax.Name.Text, syntax.Description.Text, input, least, most, steps, all, place.At(syntax))
            : null;
    }

    private ImmutableArray<RealRate>? Rates(RealSyntax syntax, AnalogueInput input, LinePlace place)
    {
        ImmutableArray<RealRate>.Builder rates = ImmutableArray.CreateBuilder<RealRate>();
        foreach (RealRateSyntax rate in syntax.Rates)
        {
            Condition? condition = _declarations.Conditions.BindOptional(rate.While, place);
            if (rates.Any(other => other.Rises == rate.Rises))
            {
                _context.Report(StructureDiagnostics.OnlyOnce(place.At(rate), rate.Rises ? "rises" : "falls", rates.First(other => other.Rises == rate.Rises).Span));
                return null;
            }

            if (rate.Rate.Unit is not { } unit || RateBinder.PerSecond(rate.Rate, unit, input.Unit.Dimension, place, _context) is not { } perSecond || (condition is null && rate.While is not null))
            {
                return null;
            }

            rates.Add(new RealRate(rate.Rises, perSecond, condition, place.At(rate)));
        }

        return rates.ToImmutable();
    }

    /// <summary>Whole steps of the reading's resolution that a DINT holds.</summary>
    private static long? Steps(Rational value, AnalogueInput input)
    {
        Rational steps = value / input.Resolution;
        return steps.IsInteger && System.Numerics.BigInteger.Abs(steps.Numerator) <= int.MaxValue ? steps.ToInt64() : null;
    }
}
