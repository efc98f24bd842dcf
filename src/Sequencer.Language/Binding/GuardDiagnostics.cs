using System.Globalization;
using Sequencer.Text;

namespace Sequencer.Language.Binding;

/// <summary>What can be wrong inside the declaration of a protection or an alarm: SEQ0540 and up.</summary>
internal static class GuardDiagnostics
{
    public static Diagnostic GroupWithoutReset(SourceSpan span, string interlock) => Error(
        "SEQ0540",
        span,
        $"`{interlock}` is in a group, but lets go without a reset",
        "a group says whose reset and first-out count; this block asks for neither",
        "delete the group, or write `from … until … and reset`");

    public static Diagnostic AlarmIncomplete(SourceSpan span, string alarm, string missing) => Error(
        "SEQ0543",
        span,
        $"`{alarm}` does not say its {missing}",
        "an alarm that nobody knows how to answer, how soon, or what for, is noise in the moment that counts (IEC 62682)",
        "write `priority`, `consequence` and `response … within …`, or leave all three out for a mere message");

    public static Diagnostic DeadbandOfNoReading(SourceSpan span) => Error(
        "SEQ0544",
        span,
        "a deadband belongs to the comparison of one reading",
        "what the value must come back to cannot be told from a switch, a band or several facts",
        "write the alarm on one comparison such as `LT101 > 5.2 m3`, or use `off after`");

    public static Diagnostic OverrideOfEmergency(SourceSpan span, Symbol trip) => Error(
        "SEQ0547",
        span,
        $"`{trip.Name}` trips the emergency: nothing may override it",
        "an emergency stop must act in every state and whoever is at the panel; the hardware acts in any case",
        "delete the override") with
    {
        Notes = [new RelatedNote(trip.Span, $"`{trip.Name}` is declared here")],
    };

    public static Diagnostic OverrideOfExclusion(SourceSpan span, Symbol exclusion) => Error(
        "SEQ0548",
        span,
        $"`{exclusion.Name}` keeps outputs apart: it cannot be overridden",
        "what must not run together is kept apart for as long as both can run at all",
        "use manual, one output at a time; or delete the override") with
    {
        Notes = [new RelatedNote(exclusion.Span, $"`{exclusion.Name}` is declared here")],
    };

    public static Diagnostic OverrideWithoutEnd(SourceSpan span, string protection) => Error(
        "SEQ0549",
        span,
        $"the override of `{protection}` has no end",
        "an override that is forgotten is a protection that is not there, and nobody knows",
        "add `at most 30 min`, or what the work takes");

    public static Diagnostic OverrideTooLong(SourceSpan span, Units.Duration longest) => Error(
        "SEQ0550",
        span,
        $"an override lasts at most {longest}",
        "the next shift takes over a plant without one of its protections, which nobody of them decided",
        "shorten it; whoever needs longer asks for it anew");

    public static Diagnostic OverriddenTwice(SourceSpan span, string protection, SourceSpan first) => Error(
        "SEQ0551",
        span,
        $"`{protection}` has two overrides",
        "how long it may be out of force, and who may ask for it, cannot be told",
        "keep one of them") with
    {
        Notes = [new RelatedNote(first, "the first one is here")],
    };

    public static Diagnostic NothingOverrides(SourceSpan span, Symbol protection) => Error(
        "SEQ0552",
        span,
        $"nothing can override `{protection.Name}`",
        "the condition would never be true: what it is there for would never happen",
        $"write `override of {protection.Name} at most … role … \"…\"`, or leave this part out") with
    {
        Notes = [new RelatedNote(protection.Span, $"`{protection.Name}` is declared here")],
    };

    public static Diagnostic ImpossibleVote(SourceSpan span, string vote, int members, int most) => Error(
        "SEQ0553",
        span,
        Text($"`{vote}` of {members} members cannot be"),
        "the vote would always or never say so, or would leave an instrument out that somebody relies on",
        Text($"write how many are needed out of how many, at most {most}, and name just as many members"));

    public static Diagnostic NoVoter(SourceSpan span) => Error(
        "SEQ0554",
        span,
        "a member of a vote is a switch, or the comparison of a reading",
        "the instruments of a vote must tell their own facts; what the program itself decides would vote with them",
        "name one switch, or one comparison such as `LT101 > 5.0 m3`");

    public static Diagnostic BadMemberUnsaid(SourceSpan span, string vote) => Error(
        "SEQ0555",
        span,
        $"`{vote}` does not say what a bad member does",
        "counted as a demand, one bad transmitter can trip; dropped, the others must do without it: both can be wrong",
        "add `if bad demand` or `if bad fewer votes`");

    public static Diagnostic UnlikePair(SourceSpan span, Programs.Output first, Programs.Output second, string difference) => Error(
        "SEQ0557",
        span,
        $"`{first.Tag}` and `{second.Tag}` are no pair: {difference}",
        "whichever runs must do the same for the step that asks; else the batch depends on which of them has failed",
        "pair two like devices, or demand them one by one") with
    {
        Notes = [new RelatedNote(first.Span, $"`{first.Tag}` is declared here"), new RelatedNote(second.Span, $"`{second.Tag}` is declared here")],
    };

    public static Diagnostic PairWithoutConfirmation(SourceSpan span, Programs.Output member) => Error(
        "SEQ0558",
        span,
        $"nothing shows whether `{member.Tag}` obeys",
        "its failure would not be known, and the standby would never take over",
        $"add `confirm … within … else alarm` to `{member.Tag}`") with
    {
        Notes = [new RelatedNote(member.Span, $"`{member.Tag}` is declared here")],
    };

    public static Diagnostic DutyOutsidePair(SourceSpan span, string pair) => Error(
        "SEQ0559",
        span,
        $"`{span.Text}` is not in the pair `{pair}`",
        "which of the two runs first is not known",
        "name one of the two after `duty`");

    private static Diagnostic Error(string code, SourceSpan span, string message, string reason, string mend) =>
        new(code, Severity.Error, span, message, reason, mend);

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
