using System.Collections.Immutable;
using Sequencer.Language.Programs;
using Sequencer.Language.Syntax;
using Sequencer.Language.Units;

namespace Sequencer.Language.Binding;

/// <summary>Alarms with their deadband, the steps that suppress them, and what IEC 62682 asks to be known of them.</summary>
internal sealed class AlarmBinder
{
    private readonly BindingContext _context;
    private readonly AmountBinder _amounts;
    private readonly DeclarationBinder _declarations;
    private readonly ProtectionBinder _protections;

    public AlarmBinder(BindingContext context, AmountBinder amounts, DeclarationBinder declarations, ProtectionBinder protections)
    {
        _context = context;
        _amounts = amounts;
        _declarations = declarations;
        _protections = protections;
    }

    public OperatorAlarm? Bind(AlarmSyntax syntax, LinePlace place)
    {
        Condition? condition = _declarations.Conditions.Bind(syntax.Condition, place);
        if (syntax.Deadband is not null)
        {
            condition = Deadband(condition, syntax.Deadband, place);
        }

        condition = Suppressed(_protections.Delayed(condition, syntax.Delays, place), syntax.SuppressedAt, place);
        AlarmResponse? response = Response(syntax, place);
        return condition is null ? null : new OperatorAlarm(syntax.Name.Text, syntax.Message.Text, condition, response, place.At(syntax));
    }

    private DeadbandFact? Deadband(Condition? condition, AmountSyntax deadband, LinePlace place)
    {
        if (condition is null)
        {
            return null;
        }

        if (condition is not CompareFact compare || Readings(compare) is not [{ } signal])
        {
            _context.Report(GuardDiagnostics.DeadbandOfNoReading(place.At(deadband)));
            return null;
        }

        if (ReadingChange.Bind(deadband, signal, place, _amounts, _declarations) is not { } width)
        {
            return null;
        }

        bool less = compare.Comparison is Comparison.Less or Comparison.LessOrEqual;
        CompareFact keep = compare with { Right = new SumQuantity(compare.Right, width, !less, compare.Right.Span) };
        _declarations.Checks.Compare(keep.Left, keep.Comparison, keep.Right, place.At(deadband), []);
        return new DeadbandFact(compare, keep, compare.Span);
    }

    private Condition? Suppressed(Condition? condition, StepNumbersSyntax? steps, LinePlace place)
    {
        if (steps is null)
        {
            return condition;
        }

        ImmutableArray<int?> numbers = [.. steps.Numbers.Select(number => _declarations.Facts.Step(number, place))];
        return condition is null || numbers.Contains(null)
            ? null
            : new AllOf([condition, .. numbers.Select(number => new Negation(new StepFact(number.GetValueOrDefault(), place.At(steps)), place.At(steps)))], condition.Span);
    }

    private AlarmResponse? Response(AlarmSyntax syntax, LinePlace place)
    {
        Duration? within = _amounts.Time(syntax.Response?.Within, place);
        if (syntax is { Priority: null, Consequence: null, Response: null })
        {
            return null;
        }

        if (syntax is not { Priority: { } priority, Consequence: { } consequence, Response: { } response })
        {
            string missing = syntax.Priority is null ? "priority" : syntax.Consequence is null ? "consequence" : "response";
            _context.Report(GuardDiagnostics.AlarmIncomplete(place.At(syntax.Name), syntax.Name.Text, missing));
            return null;
        }

        AlarmPriority rank = priority.Text switch
        {
            "high" => AlarmPriority.High,
            "medium" => AlarmPriority.Medium,
            _ => AlarmPriority.Low,
        };
        return within is null ? null : new AlarmResponse(rank, consequence.Text, response.Response.Text, within.Value);
    }

    private static ImmutableArray<AnalogueInput> Readings(CompareFact compare) =>
    [
        .. new[] { compare.Left, compare.Right }.SelectMany(QuantityMeasure.Leaves).OfType<ReadingQuantity>()
            .Select(reading => reading.Input).DistinctBy(input => input.Tag),
    ];
}
