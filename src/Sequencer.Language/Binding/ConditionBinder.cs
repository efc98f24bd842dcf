using System.Collections.Immutable;
using Sequencer.Language.Programs;
using Sequencer.Language.Syntax;
using Sequencer.Language.Units;

namespace Sequencer.Language.Binding;

/// <summary>Conditions. Returns null where a part was wrong; that part has been reported.</summary>
internal sealed class ConditionBinder
{
    private readonly BindingContext _context;
    private readonly AmountBinder _amounts;
    private readonly FactBinder _facts;
    private readonly QuantityBinder _quantities;
    private readonly ComparisonChecks _checks;

    public ConditionBinder(BindingContext context, AmountBinder amounts, FactBinder facts, QuantityBinder quantities, ComparisonChecks checks)
    {
        _context = context;
        _amounts = amounts;
        _facts = facts;
        _quantities = quantities;
        _checks = checks;
    }

    /// <summary>A condition that may be left out.</summary>
    public Condition? BindOptional(ExpressionSyntax? expression, LinePlace place, ConditionUse use = default) => expression is null ? null : Bind(expression, place, use);

    public Condition? Bind(ExpressionSyntax expression, LinePlace place) => Bind(expression, place, default);

    public Condition? Bind(ExpressionSyntax expression, LinePlace place, ConditionUse use) => expression switch
    {
        BracketExpression bracket => Bind(bracket.Inner, place, use),
        NotExpression not => Bind(not.Inner, place, use) is { } inner ? new Negation(inner, place.At(not)) : null,
        EdgeExpression edge => Bind(edge.Inner, place, use) is { } inner ? new EdgeFact(inner, edge.Rising, place.At(edge)) : null,
        JunctionExpression junction => BindJunction(junction, place, use),
        StaysExpression stays => BindStays(stays, place, use),
        CompareExpression compare => BindCompare(compare, place, use),
        WithinExpression within => BindWithin(within, place, use),
        NameExpression name => _facts.Bind(name, place, use),
        AnsweredExpression answered => _facts.Bind(answered, place, use),
        StepExpression step => _facts.Bind(step, place, use),
        StateExpression state => _facts.Bind(state, place, use),
        AmountSyntax or SumExpression or TotalExpression => NoCondition(expression, place),
        _ => throw new System.Diagnostics.UnreachableException(expression.GetType().Name),
    };

    private Condition? NoCondition(ExpressionSyntax expression, LinePlace place)
    {
        _context.Report(QuantityDiagnostics.AmountForCondition(place.At(expression)));
        return null;
    }

    private Condition? BindJunction(JunctionExpression junction, LinePlace place, ConditionUse use)
    {
        JunctionExpression? other = junction.Parts.OfType<JunctionExpression>().FirstOrDefault();
        if (other is not null)
        {
            _context.Report(StructureDiagnostics.MixedJunction(place.At(junction)));
        }

        ImmutableArray<Condition?> parts = [.. junction.Parts.Select(part => Bind(part, place, use))];
        if (parts.Contains(null))
        {
            return null;
        }

        ImmutableArray<Condition> bound = [.. parts.OfType<Condition>()];
        return junction.All ? new AllOf(bound, place.At(junction)) : new AnyOf(bound, place.At(junction));
    }

    private StaysFact? BindStays(StaysExpression stays, LinePlace place, ConditionUse use)
    {
        if (stays.Inner is JunctionExpression { All: false })
        {
            _context.Report(StructureDiagnostics.StaysBesideOr(place.At(stays)));
        }

        if (stays.AfterLastPulse && !use.PulsesGiven)
        {
            _context.Report(NameDiagnostics.NoPulses(place.At(stays)));
        }

        Condition? inner = Bind(stays.Inner, place, use);
        Duration? time = _amounts.Time(stays.Time, place);
        return inner is null || time is null ? null : new StaysFact(inner, time.Value, stays.AfterLastPulse, place.At(stays));
    }

    private CompareFact? BindCompare(CompareExpression compare, LinePlace place, ConditionUse use)
    {
        List<WrittenLiteral> literals = [];
        if (_quantities.Bind(place, use, literals, compare.Left, compare.Right) is not [{ } left, { } right])
        {
            return null;
        }

        _checks.Compare(left, compare.Comparison, right, place.At(compare), literals);
        return new CompareFact(left, compare.Comparison, right, place.At(compare));
    }

    private WithinFact? BindWithin(WithinExpression within, LinePlace place, ConditionUse use)
    {
        List<WrittenLiteral> literals = [];
        if (_quantities.Bind(place, use, literals, within.Value, within.Lower, within.Upper) is not [{ } value, { } lower, { } upper])
        {
            return null;
        }

        _checks.Within(value, lower, upper, place.At(within), literals);
        return new WithinFact(value, lower, upper, place.At(within));
    }
}
