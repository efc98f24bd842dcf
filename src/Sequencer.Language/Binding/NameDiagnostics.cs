using System.Globalization;
using Sequencer.Text;

namespace Sequencer.Language.Binding;

/// <summary>What can be wrong with names, addresses and what they are used for: SEQ02xx.</summary>
internal static class NameDiagnostics
{
    public static Diagnostic Unknown(SourceSpan span, string name, Symbol? near) => Error(
        "SEQ0201",
        span,
        $"nothing is named `{name}`",
        "a signal or device that the program does not know is neither watched nor driven",
        near is null ? $"declare `{name}`, or correct the name" : $"did you mean `{near.Name}`?") with
    {
        Notes = near is null ? [] : [new RelatedNote(near.Span, $"`{near.Name}`, {near.Kind.InWords()}, is declared here")],
    };

    public static Diagnostic DeclaredTwice(SourceSpan span, string name, Symbol first) => Error(
        "SEQ0202",
        span,
        $"`{name}` is declared twice",
        "two things of one name cannot be told apart on the drawing, in the alarm list or in the controller",
        "give one of them another name") with
    {
        Notes = [new RelatedNote(first.Span, $"first declared here, as {first.Kind.InWords()}")],
    };

    public static Diagnostic DiffersInCaseOnly(SourceSpan span, string name, Symbol first) => Error(
        "SEQ0203",
        span,
        $"`{name}` and `{first.Name}` differ only in upper and lower case",
        "the controller does not tell cases apart (IEC 61131-3, identifiers): both would be one variable",
        "give one of them another name") with
    {
        Notes = [new RelatedNote(first.Span, $"`{first.Name}`, {first.Kind.InWords()}, is declared here")],
    };

    public static Diagnostic Reserved(SourceSpan span, string name) => Error(
        "SEQ0204",
        span,
        $"`{name}` is a word of IEC 61131-3",
        "the controller's text could not use the tag that stands on the drawing",
        "give it another name, with a loop number perhaps");

    public static Diagnostic Misshapen(SourceSpan span, string name) => Error(
        "SEQ0205",
        span,
        $"`{name}` is no name for the controller",
        "IEC 61131-3 allows single underscores between letters and digits only; the tag would have to be altered in the controller",
        "use letters, digits and single underscores, and end with a letter or a digit");

    public static Diagnostic WrongKind(SourceSpan span, Symbol symbol, string needed) => Error(
        "SEQ0206",
        span,
        $"`{symbol.Name}` is {symbol.Kind.InWords()}, but {needed} is needed here",
        "the line would ask the plant for something that this device or signal cannot do or tell",
        $"name {needed}, or change the declaration of `{symbol.Name}`") with
    {
        Notes = [new RelatedNote(symbol.Span, $"`{symbol.Name}` is declared here")],
    };

    public static Diagnostic StepTwice(SourceSpan span, int number, SourceSpan first) => Error(
        "SEQ0207",
        span,
        Text($"there are two steps {number}"),
        "a `go` could lead to either of them, and the operator could not tell which one the batch is in",
        "give one of them another number") with
    {
        Notes = [new RelatedNote(first, "the first one")],
    };

    public static Diagnostic NoSuchStep(SourceSpan span, int number, int? near) => Error(
        "SEQ0208",
        span,
        Text($"there is no step {number}"),
        "the batch would have nowhere to go",
        near is int step ? Text($"write an existing step, such as {step}, or add step {number}") : Text($"add step {number}"));

    public static Diagnostic Circular(SourceSpan span, string name) => Error(
        "SEQ0209",
        span,
        $"the declaration of `{name}` leads back to itself, or leans on too long a chain of others",
        "whether a reading is usable or a device rests on would depend on its own answer",
        "break the circle with a switch that shows the physical fact, such as the one that confirms the device");

    public static Diagnostic AddressTwice(SourceSpan span, string address, SourceSpan first) => Error(
        "SEQ0210",
        span,
        $"the address `{address}` is used twice",
        "two signals on one terminal: one of them is never read, or one device is driven by the other's command",
        "give each its own address, as on the input and output list") with
    {
        Notes = [new RelatedNote(first, "first used here")],
    };

    public static Diagnostic WrongAddress(SourceSpan span, string needed) => Error(
        "SEQ0211",
        span,
        $"`{span.Text}` is no address for this: {needed} is needed",
        "the signal would be read from, or written to, a place of another kind in the controller",
        $"write {needed}");

    public static Diagnostic ListedTwice(SourceSpan span, string name) => Error(
        "SEQ0212",
        span,
        $"`{name}` is listed twice",
        "one of the two was probably meant to be another device, which is then not protected",
        "delete one, or name the device that was meant");

    public static Diagnostic OneExclusive(SourceSpan span) => Error(
        "SEQ0213",
        span,
        "one output alone cannot be exclusive",
        "the device it must never run together with is not protected",
        "name at least two outputs");

    public static Diagnostic NothingConfirms(SourceSpan span, Symbol output, string aspect) => Error(
        "SEQ0214",
        span,
        $"nothing shows whether `{output.Name}` is {aspect}: it has no `confirm`",
        "the command would be taken for the movement; a stuck valve or a tripped motor would go unseen",
        $"add `confirm` with the switch to the declaration of `{output.Name}`, or ask for `{output.Name} commanded`") with
    {
        Notes = [new RelatedNote(output.Span, $"`{output.Name}` is declared here")],
    };

    public static Diagnostic DeliversNothing(SourceSpan span, Symbol output) => Error(
        "SEQ0215",
        span,
        $"it is not said what `{output.Name}` delivers",
        "what was given cannot be counted, so the dose would have no maximum",
        $"add `delivers REAGENT at 0.20 L/min` to the declaration of `{output.Name}`") with
    {
        Notes = [new RelatedNote(output.Span, $"`{output.Name}` is declared here")],
    };

    public static Diagnostic NoEffect(SourceSpan span, string reagent, string signal, SourceSpan declaration) => Error(
        "SEQ0216",
        span,
        $"reagent `{reagent}` is not said to raise or lower `{signal}`",
        "from which side the dose approaches its target is not known, so it could run away from it",
        $"add `raises {signal}` or `lowers {signal}` to reagent `{reagent}`, or dose toward the reading it moves") with
    {
        Notes = [new RelatedNote(declaration, $"`{reagent}` is declared here")],
    };

    public static Diagnostic NotAnInput(SourceSpan span) => Error(
        "SEQ0217",
        span,
        $"an assumption speaks of inputs only, and `{span.Text}` is none",
        "an assumption about the program itself would prove the program by assuming that it is right",
        "say it with inputs, or make it a `require`, which is proved");

    public static Diagnostic WrongWord(SourceSpan span, Symbol output, string instead) => Error(
        "SEQ0218",
        span,
        $"`{output.Name}` is {output.Kind.InWords()}: `{span.Text}` is no word for it",
        "one of the two is wrong: the word or the device; the other device would not move",
        $"write `{instead}`, or name the device that was meant") with
    {
        Notes = [new RelatedNote(output.Span, $"`{output.Name}` is declared here")],
    };

    public static Diagnostic SecondConfirmation(SourceSpan span, Symbol output) => Error(
        "SEQ0219",
        span,
        $"`{output.Name}` is {output.Kind.InWords()}: it has no other end for a second switch to show",
        "the discrepancy of the device would be judged by a switch that shows something else",
        "name one switch after `confirm`");

    public static Diagnostic NoPulses(SourceSpan span) => Error(
        "SEQ0220",
        span,
        "there is no pulse here to be after: no `dose` in this step",
        "the end point would be judged while reagent is still on its way",
        "delete `after the last pulse`, or put the condition in a `go` of the step that doses");

    public static Diagnostic SelfOpposed(SourceSpan span, string name) => Error(
        "SEQ0221",
        span,
        $"reagent `{name}` cannot oppose itself",
        "the reagent that it must not meet is not named",
        "name the other reagent");

    private static Diagnostic Error(string code, SourceSpan span, string message, string reason, string mend) =>
        new(code, Severity.Error, span, message, reason, mend);

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
