using Sequencer.Language.Programs;
using Sequencer.Language.Syntax;
using Sequencer.Language.Units;
using Sequencer.Text;

namespace Sequencer.Language.Binding;

/// <summary>
/// Amounts: readings, parameters, totals, literals and their sums. All that stands in one comparison
/// has the dimension of its first name; whatever differs is blamed, once each.
/// </summary>
internal sealed class QuantityBinder
{
    private readonly BindingContext _context;
    private readonly AmountBinder _amounts;
    private readonly DeclarationBinder _declarations;

    public QuantityBinder(BindingContext context, AmountBinder amounts, DeclarationBinder declarations)
    {
        _context = context;
        _amounts = amounts;
        _declarations = declarations;
    }

    /// <summary>
    /// Binds what is compared with one another; a null stands where something was wrong. The literals
    /// met on the way are added to <paramref name="literals"/>.
    /// </summary>
    public Quantity?[] Bind(LinePlace place, ConditionUse use, List<WrittenLiteral> literals, params ExpressionSyntax[] expressions)
    {
        Measure? measure = Find(expressions, false) ?? Find(expressions, true);
        return [.. expressions.Select(expression => Bind(expression, new Scope(place, use, measure, literals)))];
    }

    /// <summary>Binds one amount that must have the dimension of <paramref name="input"/>.</summary>
    public Quantity? Bind(LinePlace place, ExpressionSyntax expression, AnalogueInput input, List<WrittenLiteral> literals) =>
        Bind(expression, new Scope(place, default, new Measure(input.Unit.Dimension, input.Tag), literals));

    private Quantity? Bind(ExpressionSyntax expression, Scope scope) => expression switch
    {
        BracketExpression bracket => Bind(bracket.Inner, scope),
        SumExpression sum => BindSum(sum, scope),
        AmountSyntax literal => BindLiteral(literal, scope),
        NameExpression { Aspect: null } name => BindName(name, scope),
        TotalExpression total => BindTotal(total, scope),
        _ => NoAmount(expression, scope),
    };

    private Quantity? NoAmount(ExpressionSyntax expression, Scope scope)
    {
        _context.Report(QuantityDiagnostics.ConditionForAmount(scope.Place.At(expression)));
        return null;
    }

    private SumQuantity? BindSum(SumExpression sum, Scope scope)
    {
        Quantity? left = Bind(sum.Left, scope);
        Quantity? right = Bind(sum.Right, scope);
        return left is null || right is null ? null : new SumQuantity(left, right, sum.Subtract, scope.Place.At(sum));
    }

    private LiteralQuantity? BindLiteral(AmountSyntax literal, Scope scope)
    {
        Unit? unit = literal.Unit is null ? null : _amounts.UnitOf(literal.Unit, scope.Place);
        if (literal.Unit is not null && unit is null)
        {
            return null;
        }

        Dimension dimension = unit?.Dimension ?? Dimension.Acidity;
        if (scope.Measure is { } measure && measure.Dimension != dimension)
        {
            _context.Report(unit is null
                ? QuantityDiagnostics.UnitMissing(scope.Place.At(literal), measure.Dimension) with { Fix = WithOnlyUnit(literal, scope) }
                : QuantityDiagnostics.UnlikeDimensions(scope.Place.At(literal), dimension, measure.Dimension, measure.Name));
            return null;
        }

        LiteralQuantity quantity = new(literal.Number.Value * (unit?.Factor ?? 1), dimension, scope.Place.At(literal));
        scope.Literals.Add(new WrittenLiteral(quantity, unit));
        return quantity;
    }

    /// <summary>With the one unit in which the number lies inside the range of the reading that it is compared with, on one of its steps.</summary>
    private Fix? WithOnlyUnit(AmountSyntax literal, Scope scope)
    {
        if (scope.Measure is not { } measure || _context.Symbols.Find(measure.Name)?.Syntax is not AnalogueInputSyntax input || UnitTable.Find(input.Unit.Text) is not { } declared)
        {
            return null;
        }

        Rational step = declared.Factor / new Rational(System.Numerics.BigInteger.Pow(10, Math.Max(input.Minimum.Decimals, input.Maximum.Decimals)), 1);
        Unit[] fitting =
        [
            .. UnitTable.Of(measure.Dimension).Where(unit =>
                literal.Number.Value * unit.Factor is var value
                && value >= input.Minimum.Value * declared.Factor && value <= input.Maximum.Value * declared.Factor && (value / step).IsInteger),
        ];
        SourceSpan place = scope.Place.At(literal);
        return fitting is [var only] ? Fix.Replace(place, $"{place.Text} {only.Symbol}") : null;
    }

    private Quantity? BindName(NameExpression name, Scope scope)
    {
        Symbol? symbol = _context.Symbols.Resolve(
            name.Name,
            scope.Place,
            found => found.Kind is SymbolKind.AnalogueInput or SymbolKind.Parameter or SymbolKind.Count or SymbolKind.Real,
            "a measured input, a parameter or a count");
        if (symbol is null)
        {
            return null;
        }

        if (scope.Use.InputsOnly && (symbol.Unit is not null || symbol.Kind is SymbolKind.Parameter or SymbolKind.Count or SymbolKind.Real))
        {
            _context.Report(NameDiagnostics.NotAnInput(scope.Place.At(name)));
            return null;
        }

        Text.SourceSpan span = scope.Place.At(name);
        Quantity? quantity = symbol.Kind switch
        {
            SymbolKind.Parameter => _declarations.Demand<Parameter>(symbol, span) is { } parameter ? new ParameterQuantity(parameter, span) : null,
            SymbolKind.Real => _declarations.Demand<Real>(symbol, span) is { } real ? new RealQuantity(real, span) : null,
            SymbolKind.Count => _declarations.Demand<Count>(symbol, span) is { } count ? new CountQuantity(count, span) : null,
            _ => _declarations.Demand<AnalogueInput>(symbol, span) is { } input ? new ReadingQuantity(input, span) : null,
        };
        return Fitting(quantity, scope);
    }

    private Quantity? BindTotal(TotalExpression total, Scope scope)
    {
        Symbol? symbol = _context.Symbols.Resolve(total.Name, scope.Place, found => found.IsOutput, "a valve or a motor");
        if (symbol?.Syntax is not OutputSyntax syntax)
        {
            return null;
        }

        if (scope.Use.InputsOnly)
        {
            _context.Report(NameDiagnostics.NotAnInput(scope.Place.At(total)));
            return null;
        }

        if (syntax.Delivers is null)
        {
            _context.Report(NameDiagnostics.DeliversNothing(scope.Place.At(total), symbol));
            return null;
        }

        Output? output = _declarations.Demand<Output>(symbol, scope.Place.At(total));
        return Fitting(output?.Delivery is null ? null : new TotalQuantity(output, scope.Place.At(total)), scope);
    }

    private Quantity? Fitting(Quantity? quantity, Scope scope)
    {
        if (quantity is not null && scope.Measure is { } measure && quantity.Dimension != measure.Dimension)
        {
            _context.Report(QuantityDiagnostics.UnlikeDimensions(quantity.Span, quantity.Dimension, measure.Dimension, measure.Name));
            return null;
        }

        return quantity;
    }

    /// <summary>The first name (or literal with a unit) among the expressions and what it measures.</summary>
    private Measure? Find(ExpressionSyntax[] expressions, bool literals)
    {
        Stack<ExpressionSyntax> open = new(expressions.Reverse());
        while (open.TryPop(out ExpressionSyntax? expression))
        {
            Measure? found = literals ? OfLiteral(expression) : OfName(expression);
            if (found is not null)
            {
                return found;
            }

            if (expression is SumExpression sum)
            {
                open.Push(sum.Right);
                open.Push(sum.Left);
            }
            else if (expression is BracketExpression bracket)
            {
                open.Push(bracket.Inner);
            }
        }

        return null;
    }

    private Measure? OfName(ExpressionSyntax expression)
    {
        string? unit = expression switch
        {
            TotalExpression => "L",
            NameExpression name => _context.Symbols.Find(name.Name.Text)?.Syntax switch
            {
                AnalogueInputSyntax input => input.Unit.Text,
                ParameterSyntax parameter => parameter.Default.Unit?.Text,
                CountSyntax count => count.Unit.Text,
                RealSyntax real => real.Unit.Text,
                _ => null,
            },
            _ => null,
        };
        string? text = (expression as NameExpression)?.Name.Text ?? (expression as TotalExpression)?.Name.Text + ".total";
        return unit is not null && UnitTable.Find(unit) is { } known ? new Measure(known.Dimension, text) : null;
    }

    private static Measure? OfLiteral(ExpressionSyntax expression) =>
        expression is AmountSyntax { Unit: { } word } && UnitTable.Find(word.Text) is { } unit ? new Measure(unit.Dimension, word.Text) : null;

    private sealed record Measure(Dimension Dimension, string Name);

    private sealed record Scope(LinePlace Place, ConditionUse Use, Measure? Measure, List<WrittenLiteral> Literals);
}
