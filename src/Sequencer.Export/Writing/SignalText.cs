using Sequencer.Language.Programs;

namespace Sequencer.Export.Writing;

/// <summary>Section 1: contacts and channels become facts and readings.</summary>
internal static class SignalText
{
    public static void Write(UnitText unit)
    {
        TextLines body = unit.Body;
        body.Section("1  Signals: wiring, delays, bad channels");
        body.Comment("The first scan after a cold start or a loss of power: Ran is not retained.");
        string ran = unit.Flag(VariableSection.Kept, "ran", "this is not the first scan");
        string first = unit.Scratch("first_scan");
        body.Add($"{first} := NOT {ran};");
        body.Add($"{ran} := TRUE;");
        foreach (SwitchInput input in unit.Unit.SwitchInputs)
        {
            Switch(unit, input);
        }

        if (!unit.Unit.AnalogueInputs.IsEmpty)
        {
            body.Comment("The last good value stands in for a bad channel, as after a broken wire, for its time; then the reading is not usable:");
            body.Comment("what is compared with it is unknown. That blocks and trips, and it leads no step on.");
        }

        foreach (AnalogueInput input in unit.Unit.AnalogueInputs)
        {
            Channel(unit, input);
        }

        foreach (AnalogueInput input in InOrderOfUse(unit.Unit))
        {
            body.Trace(input.Span, $"{input.Tag}: is the reading usable?");
            string usable = unit.Scratch($"{input.Tag}.usable");
            string good = ConditionText.Not(unit.Scratch($"{input.Tag}.bad"));
            string meaning = input.UsableWhile is null
                ? good
                : $"({good} AND {unit.Conditions.Surely(input.UsableWhile, new ConditionSite($"{input.Tag}.usable"))})";
            body.Add($"{usable} := {meaning};");
        }

        VoteText.Write(unit);
    }

    /// <summary>The output's switches show the position; <paramref name="on"/> is a Boolean of the text.</summary>
    public static string Confirms(UnitText unit, Output output, string on)
    {
        if (output.Confirmation is not { } confirmation)
        {
            return "TRUE";
        }

        string onSwitch = unit.Names.Of(confirmation.On.Tag);
        string shown = on == "TRUE" ? onSwitch : $"({onSwitch} = {on})";
        if (confirmation.Off is null)
        {
            return shown;
        }

        string offSwitch = unit.Names.Of(confirmation.Off.Tag);
        return on == "TRUE" ? $"({shown} AND (NOT {offSwitch}))" : $"({shown} AND ({offSwitch} <> {on}))";
    }

    private static void Switch(UnitText unit, SwitchInput input)
    {
        TextLines body = unit.Body;
        string fact = unit.Scratch(input.Tag);
        string contact = unit.Declare(VariableSection.Input, $"{input.Tag}.contact", "BOOL", null, Wiring(input));
        string raw = input.NormallyClosed ? $"(NOT {contact})" : contact;
        long on = unit.Scans(input.OnDelay);
        long off = unit.Scans(input.OffDelay);
        body.Clause(input.Span);
        if (on == 0 && off == 0)
        {
            body.Add($"{fact} := {raw};");
            return;
        }

        string settled = unit.Flag(VariableSection.Kept, $"{input.Tag}.settled", $"{input.Description}, after its delay");
        string clock = unit.Counter(VariableSection.Kept, $"{input.Tag}.clock", Math.Max(on, off), "scans that the contact has differed");
        string ends = off == 0 ? settled : FormattableString.Invariant($"({settled} AND ({clock} >= {off}))");
        string begins = on == 0 ? $"(NOT {settled})" : FormattableString.Invariant($"((NOT {settled}) AND ({clock} >= {on}))");
        body.Add($"IF {unit.Names.Of("first_scan")} OR {ends} OR {begins} THEN {settled} := {raw}; END_IF;");
        body.Open($"IF {settled} = {raw} THEN");
        body.Add($"{clock} := 0;");
        body.Else("ELSE");
        body.Add(UnitText.CountUp(clock, Math.Max(on, off)));
        body.Close("END_IF;");
        body.Add($"{fact} := {settled};");
    }

    private static void Channel(UnitText unit, AnalogueInput input)
    {
        TextLines body = unit.Body;
        string range = FormattableString.Invariant($"{input.Minimum} .. {input.Maximum}");
        string value = unit.Declare(
            VariableSection.Input, input.Tag, UnitText.Range(input.Minimum, input.Maximum), null, $"{input.Description}; {range}, {ResolutionWords(input)}");
        string fault = unit.Declare(VariableSection.Input, $"{input.Tag}.fault", "BOOL", null, "the channel is bad (NAMUR NE 43)");
        if (CalibrationText.Active(unit, input) is { } calibrated)
        {
            string put = unit.Declare(
                VariableSection.Input, $"{input.Tag}.put", UnitText.Range(input.Minimum, input.Maximum), null, $"the value put in place of {input.Tag}; {range}, {ResolutionWords(input)}");
            string taken = unit.Scratch($"{input.Tag}.taken", UnitText.Range(input.Minimum, input.Maximum));
            string failed = unit.Scratch($"{input.Tag}.failed");
            body.Add($"IF {calibrated} THEN {taken} := {put}; ELSE {taken} := {value}; END_IF;");
            body.Add($"{failed} := {fault} AND (NOT {calibrated});");
            (value, fault) = (taken, failed);
        }

        string held = unit.Declare(
            VariableSection.Kept, $"{input.Tag}.held", UnitText.Range(input.Minimum, input.Maximum), FormattableString.Invariant($"{input.Minimum}"), "its last good value");
        string bad = unit.Scratch($"{input.Tag}.bad");
        long filter = unit.Scans(input.BadAfter);
        body.Clause(input.Span);
        body.Add($"IF NOT {fault} THEN {held} := {value}; END_IF;");
        if (filter == 0)
        {
            body.Add($"{bad} := {fault};");
            return;
        }

        string clock = unit.Counter(VariableSection.Kept, $"{input.Tag}.bad_clock", filter, "scans that the channel has been bad", filter);
        body.Add(FormattableString.Invariant($"{bad} := {fault} AND ({clock} >= {filter});"));
        body.Open($"IF {fault} THEN");
        body.Add(UnitText.CountUp(clock, filter));
        body.Else("ELSE");
        body.Add($"{clock} := 0;");
        body.Close("END_IF;");
    }

    private static string Wiring(SwitchInput input) =>
        input.NormallyClosed ? $"{input.Description}: contact open when so" : $"{input.Description}: contact closed when so";

    private static string ResolutionWords(AnalogueInput input)
    {
        double step = (input.Resolution / input.Unit.Factor).ToDouble();
        return FormattableString.Invariant($"one is {step} {input.Unit.Symbol}");
    }

    /// <summary>Readings whose meaning leans on other readings come after them; the checker has refused circles.</summary>
    private static List<AnalogueInput> InOrderOfUse(UnitProgram unit)
    {
        List<AnalogueInput> ordered = [];
        List<AnalogueInput> rest = [.. unit.AnalogueInputs];
        while (rest.Count > 0)
        {
            AnalogueInput next = rest.FirstOrDefault(input => input.UsableWhile is null || !MentionedReadings(input.UsableWhile).Any(tag => rest.Any(other => other.Tag == tag)))
                ?? throw new InvalidOperationException("the usability of readings depends on itself");
            rest.Remove(next);
            ordered.Add(next);
        }

        return ordered;
    }

    private static IEnumerable<string> MentionedReadings(Condition condition) => condition switch
    {
        AllOf all => all.Conditions.SelectMany(MentionedReadings),
        AnyOf any => any.Conditions.SelectMany(MentionedReadings),
        Negation negation => MentionedReadings(negation.Condition),
        StaysFact stays => MentionedReadings(stays.Condition),
        VoteFact vote => MentionedReadings(vote.Vote.Fact),
        LingersFact lingers => MentionedReadings(lingers.Condition),
        DeadbandFact deadband => MentionedReadings(deadband.Raise),
        EdgeFact edge => MentionedReadings(edge.Condition),
        UsableFact usable => [usable.Input.Tag],
        CompareFact compare => Tags(compare.Left, compare.Right),
        WithinFact within => Tags(within.Value, within.Lower, within.Upper),
        _ => [],
    };

    private static IEnumerable<string> Tags(params IEnumerable<Quantity> quantities) =>
        quantities.SelectMany(QuantityMeasure.Leaves).OfType<ReadingQuantity>().Select(reading => reading.Input.Tag);
}
