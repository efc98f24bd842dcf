using System.Globalization;
using Sequencer.Text;

namespace Sequencer.Plant.Titration;

/// <summary>The mistakes that a titration table can hold beyond those of its numbers: SEQ0850 to SEQ0855.</summary>
public static class TitrationDiagnostics
{
    public static Diagnostic NotUnderstood(SourceSpan span, string found, string expected) => Error(
        "SEQ0850",
        span,
        $"{found} is not understood here",
        "each line says one thing, its parts apart by commas; a part more or less would be taken for another",
        $"write {expected}");

    public static Diagnostic TooFewPoints(SourceSpan span, int points, int least) => Error(
        "SEQ0851",
        span,
        string.Create(CultureInfo.InvariantCulture, $"the table has {points} points, but a curve needs {least}"),
        "between so few points the water may take anything",
        "add the titrant in smaller portions, the smallest where pH moves most");

    public static Diagnostic NotMore(SourceSpan span) => Error(
        "SEQ0852",
        span,
        "no more was added than at the point before",
        "the amounts are what was added so far, all portions together; two points of one amount tell two pH for one water",
        "write the amounts added so far, in their order, the one at the start as 0");

    public static Diagnostic OutsideTitration(SourceSpan span, double wanted, double low, double high) => Error(
        "SEQ0853",
        span,
        string.Create(CultureInfo.InvariantCulture, $"pH {wanted} was not reached by the titration, which goes from {low} to {high}"),
        "outside what was measured the curve is a guess, and a dose made of it may be far too much",
        "go on with the titration beyond that pH");

    public static Diagnostic WrongWay(SourceSpan span, double wanted, string reagent) => Error(
        "SEQ0854",
        span,
        string.Create(CultureInfo.InvariantCulture, $"no amount of {reagent} brings the water to pH {wanted}"),
        "the water is past that pH before anything is added",
        "name a reagent that works the other way, or another setpoint");

    public static Diagnostic MissingLine(SourceSpan span, string key, string example) => Error(
        "SEQ0855",
        span,
        $"there is no line `{key}`",
        "no value of it would be right for every sample",
        $"write one before the points, as `{example}`");

    private static Diagnostic Error(string code, SourceSpan span, string message, string reason, string mend) =>
        new(code, Severity.Error, span, message, reason, mend);
}
