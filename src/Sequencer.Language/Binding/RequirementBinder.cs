using System.Text;
using Sequencer.Language.Programs;
using Sequencer.Language.Syntax;
using Sequencer.Language.Units;
using Sequencer.Text;

namespace Sequencer.Language.Binding;

/// <summary>Assumptions, requirements and what a start needs; null where a part was wrong.</summary>
internal sealed class RequirementBinder
{
    private const int MostScans = 1_000_000;
    private readonly BindingContext _context;
    private readonly AmountBinder _amounts;
    private readonly DeclarationBinder _declarations;

    public RequirementBinder(BindingContext context, AmountBinder amounts, DeclarationBinder declarations)
    {
        _context = context;
        _amounts = amounts;
        _declarations = declarations;
    }

    public AssumptionClause? Bind(AssumeSyntax syntax, LinePlace place)
    {
        AssumedFact? fact = syntax.Never is { } never
            ? _declarations.Conditions.Bind(never, place, new ConditionUse(true, false)) is { } condition ? new AssumedNever(condition) : null
            : Rate(syntax, place);
        return fact is null
            ? null
            : new AssumptionClause(
                syntax.Name.Text, syntax.Title.Text, fact, syntax.MonitoredElse is not null, Reactions.Of(syntax.MonitoredElse, Reaction.Alarm), place.At(syntax));
    }

    public RequirementClause? Bind(RequireSyntax syntax, LinePlace place) => Fact(syntax.Requirement, place) is { } fact
        ? new RequirementClause(syntax.Name.Text, syntax.Title.Text, fact, OneLine(place.At(syntax.Statement)), place.At(syntax))
        : null;

    public StartCondition? Bind(StartSyntax syntax, LinePlace place) => _declarations.Conditions.Bind(syntax.Condition, place) is { } condition
        ? new StartCondition(condition, syntax.Message.Text, place.At(syntax))
        : null;

    private RequiredFact? Fact(RequirementSyntax syntax, LinePlace place) => syntax switch
    {
        NeverSyntax never => _declarations.Conditions.Bind(never.Condition, place) is { } condition ? new RequiredNever(condition) : null,
        AlwaysSyntax always => Always(always, place),
        ResponseSyntax response => Response(response, place),
        _ => throw new System.Diagnostics.UnreachableException(syntax.GetType().Name),
    };

    private RequiredAlways? Always(AlwaysSyntax syntax, LinePlace place)
    {
        Condition? condition = _declarations.Conditions.Bind(syntax.Condition, place);
        Condition? during = _declarations.Conditions.BindOptional(syntax.While, place);
        return condition is null || (during is null && syntax.While is not null) ? null : new RequiredAlways(condition, during);
    }

    private RequiredResponse? Response(ResponseSyntax syntax, LinePlace place)
    {
        Condition? trigger = _declarations.Conditions.Bind(syntax.Trigger, place);
        Condition? goal = _declarations.Conditions.BindOptional(syntax.GoalCondition, place);
        bool inScans = syntax.Bound.Unit is null;
        int? scans = inScans ? _amounts.Count(syntax.Bound.Number, 0, MostScans, place) : null;
        Duration? within = inScans ? default(Duration) : _amounts.Time(syntax.Bound, place);
        return trigger is null || (goal is null && syntax.GoalCondition is not null) || within is null || (inScans && scans is null)
            ? null
            : new RequiredResponse(trigger, syntax.Goal, goal, scans, within.Value);
    }

    private AssumedRate? Rate(AssumeSyntax syntax, LinePlace place)
    {
        AnalogueInput? input = _declarations.ResolveReading(syntax.Signal, place);
        if (input is null || syntax.Rate is not { Unit: { } unit } rate)
        {
            return null;
        }

        if (RateBinder.PerSecond(rate, unit, input.Unit.Dimension, place, _context) is not { } perSecond)
        {
            return null;
        }

        LiteralQuantity? tolerance = ReadingChange.Bind(syntax.Tolerance, input, place, _amounts, _declarations);
        return tolerance is null && syntax.Tolerance is not null
            ? null
            : new AssumedRate(input, syntax.Rises, perSecond, tolerance is null ? 1 : (tolerance.Value / input.Resolution).ToInt64());
    }

    /// <summary>The words as written, on one line, without comments.</summary>
    private static string OneLine(SourceSpan span)
    {
        StringBuilder text = new();
        foreach (string line in span.Text.ToString().Split('\n'))
        {
            int comment = line.IndexOf("--", StringComparison.Ordinal);
            foreach (string word in (comment < 0 ? line : line[..comment]).Split([' ', '\t'], StringSplitOptions.RemoveEmptyEntries))
            {
                text.Append(text.Length == 0 ? string.Empty : " ").Append(word);
            }
        }

        return text.ToString();
    }
}
