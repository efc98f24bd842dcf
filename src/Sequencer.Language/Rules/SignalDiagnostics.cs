using Sequencer.Language.Programs;
using Sequencer.Language.Rules.Analysis;
using Sequencer.Text;

namespace Sequencer.Language.Rules;

/// <summary>Mistakes with signals, devices and values at rest: codes and wording (SEQ05xx that are about one declaration).</summary>
internal static class SignalDiagnostics
{
    public static Diagnostic OutputNeverOn(Output output) => new(
        "SEQ0501",
        Severity.Warning,
        WrittenWords.Name(output.Span, output.Tag),
        $"nothing ever switches `{output.Tag}` on but an operator in manual",
        "no step demands it and it rests switched off: often a step that was forgotten, or a tag mistyped",
        $"demand it in a step, or take `{output.Tag}` out");

    public static Diagnostic InputNeverRead(SourceSpan declaration, string tag) => new(
        "SEQ0502",
        Severity.Warning,
        WrittenWords.Name(declaration, tag),
        $"`{tag}` is never read",
        "the instrument is paid for and wired, and the program does not look at it: often a protection that was forgotten",
        $"use `{tag}` in a condition, or take it out");

    public static Diagnostic ParameterNeverRead(Parameter parameter) => new(
        "SEQ0503",
        Severity.Warning,
        WrittenWords.Name(parameter.Span, parameter.Name),
        $"parameter `{parameter.Name}` is never read",
        "the operator sees a setting that changes nothing",
        "use it where the number stands now, or take it out");

    public static Diagnostic LatchNeverRead(Latch latch) => new(
        "SEQ0504",
        Severity.Warning,
        WrittenWords.Name(latch.Span, latch.Name),
        $"latch `{latch.Name}` is never read",
        "what it remembers guards nothing",
        "use it in a condition, or take it out");

    public static Diagnostic CommandTakenAsProof(OutputFact fact, string protection) => new(
        "SEQ0506",
        Severity.Warning,
        fact.Span,
        $"`{protection}` takes the command of `{fact.Output.Tag}` as proof that it obeys",
        "a command is no proof: with the motor tripped or the valve seized the protection still lets go",
        $"write `{fact.Output.Tag} proved`, or the switch that shows it");

    public static Diagnostic DiscrepancyBelowScan(Output output, Confirmation confirmation, int scanMilliseconds) => new(
        "SEQ0507",
        Severity.Error,
        confirmation.Span,
        $"`{output.Tag}` must confirm within {Wording.Time(confirmation.Within)}, less than one scan, {scanMilliseconds} ms",
        "no device moves and no switch answers within the scan that commands it: each start would be a fault",
        "write the stroke or start time and a margin (common practice, no source: 1.5 times)");

    public static Diagnostic NormallyOpenLimitSwitch(SwitchInput input) => new(
        "SEQ0509",
        Severity.Warning,
        WrittenWords.Name(input.Span, input.Tag),
        $"`{input.Tag}` is not normally closed: a broken wire reads as healthy",
        "by its letters (ISA-5.1) the switch reports a limit or an emergency; with an open wire, a lost supply or a pulled plug it never will again",
        "wire it normally closed and declare it so, or use a monitored contact");

    public static Diagnostic RestWithoutIfBad(Output output, RestValue rest, string reading) => new(
        "SEQ0510",
        Severity.Warning,
        rest.Span,
        $"what `{output.Tag}` rests at depends on `{reading}`, and nothing says what it rests at when `{reading}` is bad",
        "an agitator that stops over settling solids and one that runs dry are both harm; only the process tells which is less",
        "add `if bad` and the position");

    public static Diagnostic ReagentNeverDelivered(Reagent reagent) => new(
        "SEQ0512",
        Severity.Warning,
        WrittenWords.Name(reagent.Span, reagent.Name),
        $"no output delivers reagent `{reagent.Name}`",
        "what it opposes and its total are not guarded, for the program does not know what brings it",
        $"write `delivers {reagent.Name} at …` at its pump or valve, or take it out");

    public static Diagnostic DosingAtRest(Output output, RestValue rest) => new(
        "SEQ0513",
        Severity.Error,
        rest.Span,
        $"`{output.Tag}` doses `{output.Delivery?.Reagent.Name}` and can be on when nobody demands it",
        "in hold, after a stop or under an emergency the reagent would run until its tank is empty",
        "let a dosing output rest closed or stopped in every state");

    public static Diagnostic LatchNeverSets(Latch latch) => new(
        "SEQ0514",
        Severity.Error,
        WrittenWords.Name(latch.Span, latch.Name),
        $"latch `{latch.Name}` is never set: whenever its setting condition holds, its clearing one holds too",
        "clearing wins, so it remembers nothing and guards nothing",
        "make the clearing condition exclude the setting one");
}
