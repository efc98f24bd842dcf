using System.Globalization;
using Sequencer.Language.Units;
using Sequencer.Text;

namespace Sequencer.Language.Binding;

/// <summary>What can be wrong with amounts, units and ranges: SEQ03xx.</summary>
internal static class QuantityDiagnostics
{
    public static Diagnostic UnlikeDimensions(SourceSpan span, Dimension found, Dimension other, string beside) => Error(
        "SEQ0301",
        span,
        $"`{span.Text}` is {found.InWords()}, but `{beside}` is {other.InWords()}",
        "a comparison of unlike things is true or false by accident",
        $"write {other.InWords()}, in {Symbols(other)}");

    public static Diagnostic UnknownUnit(SourceSpan span, string? near) => Error(
        "SEQ0302",
        span,
        $"there is no unit `{span.Text}`",
        "the amount has no meaning, so the limit or dose has none",
        near is null ? "write one of the units of the language (`L`, `m3`, `L/min`, `s`, `min`, `kPa`, `pH`, ...)" : $"did you mean `{near}`?");

    public static Diagnostic WrongDimension(SourceSpan span, Dimension found, Dimension needed) => Error(
        "SEQ0303",
        span,
        $"`{span.Text}` is {found.InWords()}, but {needed.InWords()} is needed here",
        "the line would take one thing for another, a level for a time perhaps",
        $"write {needed.InWords()}, in {Symbols(needed)}");

    public static Diagnostic UnitMissing(SourceSpan span, Dimension needed) => Error(
        "SEQ0304",
        span,
        $"`{span.Text}` has no unit, and {needed.InWords()} is needed here",
        "litres taken for cubic metres are a thousandfold error",
        $"write the unit after the number ({Symbols(needed)}); only pH may be left out");

    public static Diagnostic OffResolution(SourceSpan span, string step, string below, string above) => Error(
        "SEQ0305",
        span,
        $"`{span.Text}` falls between two steps of {step}",
        "the controller sees whole steps only, so the limit would act at another value than the one that was reviewed",
        $"write `{below}` or `{above}`, or declare the range with more decimals");

    public static Diagnostic NotWholeMilliseconds(SourceSpan span) => Error(
        "SEQ0306",
        span,
        $"`{span.Text}` is no whole number of milliseconds",
        "the controller counts time in scans of whole milliseconds",
        "write a time to the millisecond");

    public static Diagnostic TimeNotPositive(SourceSpan span) => Error(
        "SEQ0307",
        span,
        $"a time of `{span.Text}` is no time here",
        "a wait or limit without length acts at once, or never",
        "write a time longer than nothing");

    public static Diagnostic TimeTooLong(SourceSpan span, int hours) => Error(
        "SEQ0308",
        span,
        Text($"`{span.Text.ToString()}` is longer than {hours} h"),
        "a limit that long protects nobody, and the controller's counters would run over",
        Text($"write at most {hours} h"));

    public static Diagnostic EmptyRange(SourceSpan span) => Error(
        "SEQ0309",
        span,
        "the range ends where it starts, or before",
        "a reading or a setting without a range can have no value",
        "write the lower end first");

    public static Diagnostic DefaultOutside(SourceSpan span, string range) => Error(
        "SEQ0310",
        span,
        $"`{span.Text}` lies outside the parameter's own range, {range}",
        "a batch with the value as delivered would refuse to start",
        "write a value inside the range, or widen the range");

    public static Diagnostic AlwaysSame(SourceSpan span, bool value, string range) => Error(
        "SEQ0311",
        span,
        $"this is always {(value ? "true" : "false")}: {range}",
        value ? "what it is meant to wait for or to keep off is not waited for at all" : "what it is meant to detect is never detected; a step that waits for it never ends",
        "correct the value or the unit, or the range in the declaration");

    public static Diagnostic PartlyOutside(SourceSpan span, string range, string reading) => Error(
        "SEQ0312",
        span,
        $"`{span.Text}` can be {range}, but {reading}",
        "with some settings the condition can never come true, or is true from the start",
        "narrow the parameter's range to what the instrument reads, or widen the instrument's range");

    public static Diagnostic PulseRounded(SourceSpan span, long pulse, long actual, int scan) => new(
        "SEQ0313",
        Severity.Warning,
        span,
        Text($"a pulse of {pulse} ms is given as {actual} ms, in whole scans of {scan} ms"),
        "each pulse delivers more than is written, and the batch is overdosed by as much",
        Text($"write the pulse in whole scans of {scan} ms"));

    public static Diagnostic TooLarge(SourceSpan span, string step) => Error(
        "SEQ0314",
        span,
        $"in steps of {step} this does not fit the controller's integers",
        "a 32-bit counter (IEC 61131-3 DINT) would overflow and take a large amount for a negative one",
        "write fewer decimals, use a narrower range, or bring the resolutions that meet here closer together");

    public static Diagnostic EmptyBand(SourceSpan span) => Error(
        "SEQ0315",
        span,
        "the lower end of this band is, or can be, above its upper end",
        "the condition could never be true; a step that waits for it never ends",
        "write the lower end first, and check it against the ranges of the parameters");

    public static Diagnostic NotPositive(SourceSpan span) => Error(
        "SEQ0316",
        span,
        $"`{span.Text}` must be more than nothing",
        "an amount of nothing is delivered, allowed or noticed never",
        "write an amount above zero");

    public static Diagnostic CountOutside(SourceSpan span, int low, int high) => Error(
        "SEQ0317",
        span,
        Text($"`{span.Text.ToString()}` is not between {low} and {high}"),
        "the controller counts in small whole numbers",
        Text($"write a whole number from {low} to {high}"));

    public static Diagnostic AmountForCondition(SourceSpan span) => Error(
        "SEQ0318",
        span,
        $"`{span.Text}` is an amount, and neither true nor false",
        "what the step or the protection waits for is not said",
        $"compare it with something, as in `{span.Text} > ...`, or ask for `usable`");

    public static Diagnostic ConditionForAmount(SourceSpan span) => Error(
        "SEQ0319",
        span,
        $"`{span.Text}` is true or false, and no amount",
        "it cannot be compared with or added to an amount",
        "name a reading, a parameter, a total or a number with its unit");

    public static Diagnostic NotARate(SourceSpan span, Dimension dimension) => Error(
        "SEQ0320",
        span,
        $"`{span.Text}` is no rate of change of {dimension.InWords()}",
        "how fast the reading may change decides how late a protection may act",
        $"write a unit of {dimension.InWords()} over a time, such as `{UnitTable.Of(dimension).Last().Symbol}/min`");

    private static string Symbols(Dimension dimension) => string.Join(", ", UnitTable.Of(dimension).Select(unit => $"`{unit.Symbol}`"));

    private static Diagnostic Error(string code, SourceSpan span, string message, string reason, string mend) =>
        new(code, Severity.Error, span, message, reason, mend);

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
