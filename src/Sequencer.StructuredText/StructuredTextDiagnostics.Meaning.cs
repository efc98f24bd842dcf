using System.Globalization;
using Sequencer.Control.TransitionSystems;
using Sequencer.Text;

namespace Sequencer.StructuredText;

/// <summary>Names, types and meaning.</summary>
public static partial class StructuredTextDiagnostics
{
    public static Diagnostic UndeclaredName(SourceSpan span, string name) => Error(
        "SEQ0710",
        span,
        $"`{name}` is not declared",
        "a misspelt name is a signal that is never read or an output that is never driven",
        "declare it in a VAR section, or correct the spelling");

    public static Diagnostic DeclaredTwice(SourceSpan span, string name, SourceSpan first) => Error(
        "SEQ0711",
        span,
        $"`{name}` is declared already",
        "two things of one name (the case of letters means nothing) cannot be told apart in review or on the screen",
        "rename one of them") with
    { Notes = [new RelatedNote(first, "the first declaration")] };

    public static Diagnostic UnknownType(SourceSpan span, string name) => Error(
        "SEQ0712",
        span,
        $"there is no type or block `{name}`",
        "without its type the variable has no range and no meaning",
        "declare it in a TYPE section or as a FUNCTION_BLOCK in this file, or correct the spelling");

    public static Diagnostic WrongType(SourceSpan span, string expected, string found) => Error(
        "SEQ0713",
        span,
        $"expected {expected}, found {found}",
        "a value taken for another kind of value is the mistake that types are there to catch",
        "use a value of the right type, or an explicit conversion such as `INT_TO_DINT`");

    public static Diagnostic ImplicitNarrowing(SourceSpan span, string from, string to) => Error(
        "SEQ0714",
        span,
        $"{from} does not fit {to} without a conversion",
        "controllers differ in what they do with the part that does not fit: some cut it off without a word",
        $"convert where it is meant, as `{from}_TO_{to}(...)`, or declare both alike");

    public static Diagnostic OutsideType(SourceSpan span, string value, string type, IntegerRange range) => Error(
        "SEQ0715",
        span,
        $"{value} is outside {type} ({range})",
        "the controller would hold another number than the one written",
        "use a number inside the range, or a wider type");

    public static Diagnostic NotAssignable(SourceSpan span, string name, string why) => Error(
        "SEQ0716",
        span,
        $"`{name}` cannot be assigned: {why}",
        "what a reviewer takes for a measured or fixed value would be overwritten",
        "assign to a variable of your own and use that");

    public static Diagnostic NoSuchMember(SourceSpan span, string name, string block) => Error(
        "SEQ0717",
        span,
        $"`{block}` has no `{name}` that can be used here",
        "inputs, outputs and in-outs are a block's only connections; its own variables cannot be seen from outside",
        "use one of its VAR_INPUT, VAR_OUTPUT or VAR_IN_OUT names");

    public static Diagnostic MayLeaveRange(SourceSpan span, string range, string type, IntegerRange limits) => Error(
        "SEQ0718",
        span,
        $"this can be {range}, outside {type} ({limits})",
        "at the limit one controller wraps round, another stops: a counter would jump from full to empty",
        "guard it (`IF x < 1000 THEN x := x + 1; END_IF`), limit it with LIMIT or MIN, or use a wider type");

    public static Diagnostic NotLinear(SourceSpan span, string operation) => Error(
        "SEQ0719",
        span,
        $"{operation} is not read: one side must be a constant",
        "proofs are in linear integer arithmetic, so that an outside solver can check them",
        "use a constant factor or divisor, or a table of cases");

    public static Diagnostic DivisionByZero(SourceSpan span) => Error(
        "SEQ0720",
        span,
        "division by zero",
        "controllers differ: some stop the task, and the outputs with it",
        "divide by something else");

    public static Diagnostic ReadBeforeWritten(SourceSpan span, string name) => Error(
        "SEQ0721",
        span,
        $"`{name}` may be read before it has a value",
        "a VAR_TEMP holds whatever was left in memory until it is assigned in the same scan",
        "assign it on every way that leads here, or declare it in VAR with an initial value");

    public static Diagnostic OutputNeverAssigned(SourceSpan span, string name) => Warning(
        "SEQ0722",
        span,
        $"output `{name}` is never assigned",
        "it keeps its initial value for ever: the equipment behind it never moves",
        "assign it, or remove it");

    public static Diagnostic TimerCalledConditionally(SourceSpan span, string name) => Error(
        "SEQ0723",
        span,
        $"timer `{name}` is called only under a condition",
        "a timer that is not called in a scan neither counts nor resets, and controllers differ in what it then shows",
        "call it in every scan, outside IF, CASE and conditional blocks, with the condition as its input");

    public static Diagnostic TimerCalledTwice(SourceSpan span, string name) => Error(
        "SEQ0724",
        span,
        $"timer `{name}` is called more than once in a scan",
        "each call is a new look at the clock: counted scans and real time then part",
        "declare one instance for each use");

    public static Diagnostic PresetNotConstant(SourceSpan span, string name) => Error(
        "SEQ0725",
        span,
        $"the preset time of `{name}` is not a constant",
        "what a running timer does when its preset changes is left open by the standard",
        "give a literal or a VAR CONSTANT, or count scans in an integer of your own");

    public static Diagnostic BlockNeverCalled(SourceSpan span, string name) => Warning(
        "SEQ0726",
        span,
        $"block `{name}` is never called",
        "its outputs keep their initial values for ever",
        "call it, or remove it");

    public static Diagnostic ContainsItself(SourceSpan span, string name) => Error(
        "SEQ0727",
        span,
        $"`{name}` contains or calls itself, or is nested too deep",
        "a controller gives each block its memory once, before it runs",
        "take the inner instance or call out");

    public static Diagnostic LoopBounds(SourceSpan span, string fault) => Error(
        "SEQ0728",
        span,
        $"this loop cannot be unrolled: {fault}",
        "a scan has a fixed time: every loop must end after a number of turns that can be read from the text",
        "use constant bounds, a step other than 0, and few turns");

    public static Diagnostic LabelRepeated(SourceSpan span) => Warning(
        "SEQ0729",
        span,
        "an earlier branch takes this value already",
        "CASE does only the first branch that matches: this one is never reached by that value",
        "remove the label, or correct it");

    public static Diagnostic AddressTakenTwice(SourceSpan span, string address, SourceSpan first) => Error(
        "SEQ0730",
        span,
        $"address `{address}` has a name already",
        "two names for one terminal: whichever is written last in a scan wins, and the drawing shows one of them",
        "correct the address, or use the first name") with
    { Notes = [new RelatedNote(first, "the first use")] };

    public static Diagnostic AmbiguousEnumerator(SourceSpan span, string name) => Error(
        "SEQ0731",
        span,
        $"`{name}` belongs to more than one enumeration",
        "a state of one sequence taken for a state of another has the wrong number",
        $"write the type before it, as `TYPE#{name}`");

    public static Diagnostic NoEntryPoint(SourceSpan span, string fault) => Error(
        "SEQ0732",
        span,
        $"it is not clear what to run: {fault}",
        "nothing can be said of a text that does not say what runs",
        "declare one PROGRAM (with a CONFIGURATION where there are more), or name the block to read");

    public static Diagnostic ConstantExpected(SourceSpan span) => Error(
        "SEQ0733",
        span,
        "this must be a constant",
        "it is needed before the first scan, when no variable has a value",
        "use a literal, a name of an enumeration or a VAR CONSTANT");

    public static Diagnostic NoScanPeriod(SourceSpan span, string fault) => Error(
        "SEQ0734",
        span,
        $"the scan period is not known: {fault}",
        "timers count scans: without the period nothing can be said about any time",
        "declare `TASK name(INTERVAL := T#100ms, PRIORITY := 1);` with a whole number of milliseconds and run the program with it");

    public static Diagnostic TooLarge(SourceSpan span, int limit) => Error(
        "SEQ0735",
        span,
        string.Create(CultureInfo.InvariantCulture, $"one scan takes more than {limit} statements or expressions"),
        "it is more than can be compared in bounded memory and time",
        "shorten the loops, or split the program");

    public static Diagnostic InOutNotGiven(SourceSpan span, string name) => Error(
        "SEQ0736",
        span,
        $"in-out `{name}` must be given a variable of its own type",
        "an in-out is another name for the caller's variable: without one it names nothing",
        "give it in every call, as `name := variable`");

    public static Diagnostic MalformedAddress(SourceSpan span) => Error(
        "SEQ0737",
        span,
        $"`{span.Text}` is not an address",
        "a signal wired to no terminal reads as nothing",
        "write `%I`, `%Q` or `%M`, a size X, B, W or D, and numbers joined by points: `%IX0.3`, `%QW2`");

    public static Diagnostic NotCompared(SourceSpan span, string construct, string why, string mend) => Error(
        "SEQ0739",
        span,
        $"{construct} is read but cannot be compared: {why}",
        "an equality that leaves out what a value decides would be a promise that nobody has checked",
        mend);

    public static Diagnostic AddressesOverlap(SourceSpan span, string address, string other, SourceSpan first) => Error(
        "SEQ0740",
        span,
        $"address `{address}` overlaps `{other}`",
        "what is written by one name changes under the other",
        "correct one of the addresses, or keep to one of the names") with
    { Notes = [new RelatedNote(first, "the other address")] };

    public static Diagnostic RealEquality(SourceSpan span) => Error(
        "SEQ0741",
        span,
        "numbers with a decimal point are compared for equality",
        "after rounding two such numbers are hardly ever equal: what waits for it waits for ever",
        "compare with `<=` or `>=`, in whole numbers of a small unit");

    public static Diagnostic BlockCalledConditionally(SourceSpan span, string name) => Warning(
        "SEQ0742",
        span,
        $"block `{name}` is not called in every scan",
        "it does not see its inputs meanwhile: an edge or a count is missed or comes late, and its outputs stand still",
        "call it in every scan, with the condition as an input");

    public static Diagnostic UnreachableCode(SourceSpan span) => Warning(
        "SEQ0743",
        span,
        "this is never reached",
        "a reviewer reads an action here that the controller never takes",
        "remove it, or correct the condition or the jump before it");

    public static Diagnostic IndexOutside(SourceSpan span, string range, string array, IntegerRange bounds) => Error(
        "SEQ0744",
        span,
        $"this index can be {range}, outside `{array}` ({bounds})",
        "controllers differ in what lies beyond an array: another variable is read, or overwritten without a trace",
        "guard it (`IF i <= 4 THEN ... END_IF`), limit it with LIMIT, or declare the index with a range");

    public static Diagnostic FinerThanMillisecond(SourceSpan span) => Error(
        "SEQ0738",
        span,
        $"`{span.Text}` is not a whole number of milliseconds",
        "times are counted in whole milliseconds here and on many controllers: the rest would be lost",
        "round it to milliseconds");
}
