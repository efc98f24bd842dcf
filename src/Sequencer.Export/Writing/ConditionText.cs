using System.Globalization;
using Sequencer.Language.Programs;
using Sequencer.Language.Units;

namespace Sequencer.Export.Writing;

/// <summary>
/// Conditions as Boolean expressions of the text, in both readings: surely and possibly so. Every
/// operator is bracketed, so that no reader needs the table of precedence.
/// </summary>
internal sealed class ConditionText(UnitText unit)
{
    private readonly List<(StayClock Clock, string Condition)> _stepClocks = [];

    /// <summary>The clocks of conditions that steps own, counted at the end of the scan.</summary>
    public IReadOnlyList<(StayClock Clock, string Condition)> StepClocks => _stepClocks;

    public string Surely(Condition condition, ConditionSite site) => Write(condition, site, surely: true);

    public string Possibly(Condition condition, ConditionSite site) => Write(condition, site, surely: false);

    /// <summary>Whether the condition can be unknown at all.</summary>
    public static bool CanBeUnknown(Condition condition) => condition switch
    {
        AllOf all => all.Conditions.Any(CanBeUnknown),
        AnyOf any => any.Conditions.Any(CanBeUnknown),
        Negation negation => CanBeUnknown(negation.Condition),
        StaysFact stays => CanBeUnknown(stays.Condition),
        VoteFact vote => CanBeUnknown(vote.Vote.Fact),
        LingersFact lingers => CanBeUnknown(lingers.Condition),
        DeadbandFact deadband => CanBeUnknown(deadband.Raise),
        EdgeFact edge => CanBeUnknown(edge.Condition),
        CompareFact compare => Readings(compare.Left, compare.Right).Count > 0,
        WithinFact within => Readings(within.Value, within.Lower, within.Upper).Count > 0,
        NamedFact => true,
        _ => false,
    };

    /// <summary>All readings in the quantities are usable.</summary>
    public string Usable(params IReadOnlyList<Quantity> quantities) =>
        UnitText.Bracketed(Readings(quantities).Select(Usable), "AND", "TRUE");

    /// <summary>The quantities as integer expressions in one measure.</summary>
    public string[] InCommonMeasure(params IReadOnlyList<Quantity> quantities)
    {
        Rational measure = QuantityMeasure.Common(quantities, unit.ScanMilliseconds);
        return [.. quantities.Select(quantity => Counts(quantity, measure))];
    }

    private string Usable(AnalogueInput input) => Foreign(input.Tag) ? unit.Seen.Usable(input) : unit.Names.Of($"{input.Tag}.usable");

    private string Write(Condition condition, ConditionSite site, bool surely) => condition switch
    {
        ConstantCondition constant => constant.Value ? "TRUE" : "FALSE",
        AllOf all => UnitText.Bracketed(all.Conditions.Select(part => Write(part, site, surely)), "AND", "TRUE"),
        AnyOf any => UnitText.Bracketed(any.Conditions.Select(part => Write(part, site, surely)), "OR", "FALSE"),
        Negation { Condition: Negation twice } => Write(twice.Condition, site, surely),
        Negation negation => Not(Write(negation.Condition, site, !surely)),
        SwitchFact fact => Foreign(fact.Input.Tag) ? unit.Seen.Switch(fact.Input) : unit.Names.Of(fact.Input.Tag),
        OutputFact fact => Output(fact, site),
        DosedFact fact => AmountDoseText.Dosed(unit, fact),
        AnsweredFact fact => FormattableString.Invariant($"({PromptText.Answer(unit, fact.Prompt)} = {fact.Answer})"),
        StartedFact fact => StartText.TakenBy(unit, fact.Unit),
        OwnerFact fact => unit.Seen.Owner(fact.Equipment, fact.Unit),
        NamedFact fact => Foreign(fact.Fact) ? unit.Seen.Fact(fact.Fact, surely) : ClosingText.Fact(unit, fact.Fact, surely),
        LatchFact fact => Foreign(fact.Latch) ? unit.Seen.Latch(fact.Latch) : unit.Names.Of(fact.Latch),
        TripFact fact when Foreign(fact.Trip) => unit.Seen.Trip(fact.Trip),
        TripFact fact => unit.Flag(VariableSection.Temporary, $"{fact.Trip}.before", ""),
        StepFact { Unit: { } other } fact => unit.Seen.Step(other, fact.Step),
        VoteFact fact => VoteText.Name(unit, fact.Vote, surely) ?? Write(fact.Vote.Fact, site, surely),
        DutyFact fact => PairText.OnDuty(unit, fact),
        OverrideFact fact => OverrideText.Active(unit, fact.Protection) ?? "FALSE",
        StepFact fact => unit.StepAtStart(fact.Step),
        StateFact fact => $"({(fact.Unit is null ? "State_At_Start" : unit.Seen.State(fact.Unit))} = {StateText.Value(fact.State)})",
        UsableFact fact => Usable(fact.Input),
        CompareFact fact => Compare(fact, surely),
        WithinFact fact => Within(fact, surely),
        StaysFact fact => Stays(fact, site, surely),
        LingersFact fact => Lingers(fact, site, surely),
        DeadbandFact fact => Deadband(fact, site, surely),
        EdgeFact fact => Edge(fact, site, surely),
        _ => throw new System.Diagnostics.UnreachableException($"no text for {condition.GetType().Name}"),
    };

    private string Output(OutputFact fact, ConditionSite site)
    {
        if (Foreign(fact.Output.Tag))
        {
            return fact.Kind == OutputFactKind.Failed ? unit.Seen.Discrepancy(fact.Output) : unit.Seen.Output(fact.Output);
        }

        string on = site.ThisScansOutputs ? unit.Names.Of(fact.Output.Tag) : unit.Names.Of($"{fact.Output.Tag}.last");
        return fact.Kind switch
        {
            OutputFactKind.On => on,
            OutputFactKind.Proved => $"({on} AND {SignalText.Confirms(unit, fact.Output, "TRUE")})",
            OutputFactKind.Failed => unit.Flag(VariableSection.Temporary, $"{fact.Output.Tag}.discrepancy.before", ""),
            _ => throw new System.Diagnostics.UnreachableException($"no text for {fact.Kind}"),
        };
    }

    private string Compare(CompareFact fact, bool surely)
    {
        string[] sides = InCommonMeasure(fact.Left, fact.Right);
        string symbol = fact.Comparison switch
        {
            Comparison.Less => "<",
            Comparison.LessOrEqual => "<=",
            Comparison.Greater => ">",
            Comparison.GreaterOrEqual => ">=",
            _ => throw new System.Diagnostics.UnreachableException($"no text for {fact.Comparison}"),
        };
        return Measured($"({sides[0]} {symbol} {sides[1]})", surely, fact.Left, fact.Right);
    }

    private string Within(WithinFact fact, bool surely)
    {
        string[] sides = InCommonMeasure(fact.Lower, fact.Value, fact.Upper);
        return Measured($"(({sides[0]} <= {sides[1]}) AND ({sides[1]} <= {sides[2]}))", surely, fact.Value, fact.Lower, fact.Upper);
    }

    private string Measured(string comparison, bool surely, params IReadOnlyList<Quantity> quantities)
    {
        string usable = Usable(quantities);
        if (usable == "TRUE")
        {
            return comparison;
        }

        return surely ? $"({usable} AND {comparison})" : $"({Not(usable)} OR {comparison})";
    }

    /// <summary>
    /// Outside a step a TON is exactly what is meant: it starts anew whenever its input is false. A
    /// step's clock also stops outside Running, which no TON does: it counts scans.
    /// </summary>
    private string Stays(StaysFact fact, ConditionSite site, bool surely)
    {
        long scans = unit.Scans(fact.Time);
        bool alike = surely || !CanBeUnknown(fact.Condition);
        string condition = Write(fact.Condition, site, surely);
        string path = site.PathOf(fact, "stays") + (alike ? "" : ".possibly");
        if (fact.AfterLastPulse && site.Step is not null)
        {
            IEnumerable<string> pulses = site.Step.Actions.OfType<DoseAction>()
                .Select(dose => Not(unit.Names.Of(DoseText.Path(site.Step, dose, "pulsing"))));
            condition = UnitText.Bracketed([condition, .. pulses], "AND", "TRUE");
        }

        if (scans == 0)
        {
            return condition;
        }

        string met = unit.Scratch(path + ".fact");
        if (site.Known.Add(path))
        {
            unit.Body.Add($"{met} := {condition};");
            if (site.Step is null)
            {
                string timer = unit.Declare(VariableSection.Kept, path, "TON", null, $"lasts {DurationText.Of(fact.Time)}");
                unit.Body.Add($"{timer}(IN := {met}, PT := {DurationText.Of(fact.Time)});");
            }
            else
            {
                string clock = unit.Counter(VariableSection.Kept, path, scans, $"scans that it has lasted, to {scans}");
                _stepClocks.Add((new StayClock(clock, scans, site.Step), met));
            }
        }

        return site.Step is null
            ? $"{unit.Names.Of(path)}.Q"
            : FormattableString.Invariant($"({met} AND ({unit.Names.Of(path)} >= {scans}))");
    }

    private string Lingers(LingersFact fact, ConditionSite site, bool surely)
    {
        bool alike = surely || !CanBeUnknown(fact.Condition);
        string condition = Write(fact.Condition, site, surely);
        string path = site.PathOf(fact, "lingers") + (alike ? "" : ".possibly");
        long scans = unit.Scans(fact.Time);
        string holds = unit.Scratch(path + ".fact");
        if (site.Known.Add(path))
        {
            string clock = unit.Counter(VariableSection.Kept, path, scans, $"scans since its end, to {scans}", scans);
            string so = unit.Scratch(path + ".now");
            unit.Body.Add($"{so} := {condition};");
            unit.Body.Add(FormattableString.Invariant($"{holds} := {so} OR ({clock} < {scans});"));
            unit.Body.Open($"IF {so} THEN");
            unit.Body.Add($"{clock} := 0;");
            unit.Body.Else("ELSE");
            unit.Body.Add(UnitText.CountUp(clock, scans));
            unit.Body.Close("END_IF;");
        }

        return holds;
    }

    private string Deadband(DeadbandFact fact, ConditionSite site, bool surely)
    {
        string path = site.PathOf(fact, "deadband") + (surely ? "" : ".possibly");
        string raised = unit.Flag(VariableSection.Kept, path, "raised, and not yet back by the deadband");
        if (site.Known.Add(path))
        {
            unit.Body.Add($"{raised} := {Compare(fact.Raise, surely)} OR ({raised} AND {Compare(fact.Keep, surely)});");
        }

        return raised;
    }

    private string Edge(EdgeFact fact, ConditionSite site, bool surely)
    {
        bool alike = !CanBeUnknown(fact.Condition);
        string nowSurely = fact.Rising ? Write(fact.Condition, site, surely: true) : Not(Write(fact.Condition, site, surely: false));
        string nowPossibly = fact.Rising ? Write(fact.Condition, site, surely: false) : Not(Write(fact.Condition, site, surely: true));
        string path = site.PathOf(fact, fact.Rising ? "rising" : "falling");
        if (site.Known.Add(path))
        {
            Remember(path, nowSurely);
            if (!alike)
            {
                Remember(path + ".possibly", nowPossibly);
            }
        }

        string own = surely || alike ? path : path + ".possibly";
        string other = surely && !alike ? path + ".possibly" : path;
        return $"({unit.Names.Of(own + ".fact")} AND {Not(unit.Names.Of(other + ".before"))})";
    }

    /// <summary>Keeps last scan's value aside and takes this scan's.</summary>
    private void Remember(string path, string now)
    {
        string before = unit.Scratch(path + ".before");
        string fact = unit.Scratch(path + ".fact");
        string kept = unit.Flag(VariableSection.Kept, path, "so in the scan before", initial: true);
        unit.Body.Add($"{before} := {kept};");
        unit.Body.Add($"{fact} := {now};");
        unit.Body.Add($"{kept} := {fact};");
    }

    private string Counts(Quantity root, Rational measure)
    {
        string text = "";
        IReadOnlyList<(Quantity Leaf, bool Negative)> terms = QuantityMeasure.Terms(root);
        foreach ((Quantity leaf, bool negative) in terms)
        {
            string sign = text.Length == 0 ? (negative ? "-" : "") : negative ? " - " : " + ";
            text += sign + Leaf(leaf, measure);
        }

        return terms.Count == 1 ? text : $"({text})";
    }

    private string Leaf(Quantity leaf, Rational measure)
    {
        if (leaf is LiteralQuantity literal)
        {
            return (literal.Value / measure).ToInt64().ToString(CultureInfo.InvariantCulture);
        }

        long factor = (QuantityMeasure.Resolution(leaf, unit.ScanMilliseconds) / measure).ToInt64();
        string name = Steps(leaf);
        return factor == 1 ? name : FormattableString.Invariant($"({factor} * {name})");
    }

    /// <summary>The variable that holds a leaf other than a literal, in steps of its own resolution.</summary>
    public string Steps(Quantity leaf) => leaf switch
    {
        ReadingQuantity reading when Foreign(reading.Input.Tag) => unit.Seen.Reading(reading.Input),
        TotalQuantity total when Foreign(total.Output.Tag) => unit.Seen.Total(total.Output),
        ReadingQuantity reading => unit.Names.Of($"{reading.Input.Tag}.held"),
        ParameterQuantity parameter => unit.Names.Of($"{parameter.Parameter.Name}.batch"),
        TotalQuantity total => unit.Names.Of($"{total.Output.Tag}.total"),
        CountQuantity count => Foreign(count.Count.Name) ? unit.Seen.Count(count.Count.Name) : CountText.Value(unit, count.Count),
        _ => throw new System.Diagnostics.UnreachableException($"no text for {leaf.GetType().Name}"),
    };

    private static List<AnalogueInput> Readings(params IReadOnlyList<Quantity> quantities) =>
        [.. quantities.SelectMany(QuantityMeasure.Leaves).OfType<ReadingQuantity>().Select(reading => reading.Input).DistinctBy(input => input.Tag)];

    private static bool Foreign(string name) => QualifiedName.IsForeign(name);

    public static string Not(string text) => text switch
    {
        "TRUE" => "FALSE",
        "FALSE" => "TRUE",
        _ when text.StartsWith("(NOT ", StringComparison.Ordinal) && text[5..^1].All(character => char.IsAsciiLetterOrDigit(character) || character == '_') => text[5..^1],
        _ => $"(NOT {text})",
    };
}
