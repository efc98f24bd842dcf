using Sequencer.Plant.Yaml;
using Sequencer.Text;

namespace Sequencer.Plant.Description;

/// <summary>The mistakes a plant description can hold beyond those of any YAML file: SEQ0830 to SEQ0840.</summary>
public static class PlantDiagnostics
{
    public static Diagnostic DuplicateName(Placed<string> name, SourceSpan first) => Error(
        "SEQ0830",
        name.Span,
        $"the name `{name.Value}` is used twice in the plant",
        "a tag stands for one piece of equipment; two would be driven and read as one",
        "give one of them its own tag") with
    {
        Notes = [new RelatedNote(first, "first used here")],
    };

    public static Diagnostic UnknownName(Placed<string> name, string expected, IEnumerable<string> known) => Error(
        "SEQ0831",
        name.Span,
        $"the plant has no {expected} named `{name.Value}`",
        "what is connected to nothing would never move or never be filled",
        YamlDiagnostics.Suggestion(name.Value, known, "the names that fit here are"));

    public static Diagnostic BadName(Placed<string> name) => Error(
        "SEQ0832",
        name.Span,
        $"`{name.Value}` cannot be a name",
        "names are the tags of programs, drawings and reports, which allow letters, digits and `_` only",
        "start with a letter and go on with letters, digits or `_`, without the hyphen of the drawing");

    public static Diagnostic UnsupportedVersion(SourceSpan span, long written) => Error(
        "SEQ0833",
        span,
        FormattableString.Invariant($"plant description version {written} is not known"),
        "keys may have changed their meaning between versions",
        "write `plant: 1`");

    public static Diagnostic OutOfOrder(SourceSpan span, string what, string lower, string higher) => Error(
        "SEQ0834",
        span,
        $"{what}: {lower} must be below {higher}",
        "the piece could never work in this plant, so what is simulated with it proves nothing",
        "correct one of the two values");

    public static Diagnostic UnknownSubstance(Placed<string> name) => Error(
        "SEQ0835",
        name.Span,
        $"the chemistry knows no substance `{name.Value}`",
        "a substance left out would shift the pH that is simulated",
        YamlDiagnostics.Suggestion(name.Value, Substance.All.Select(substance => substance.Name), "it knows"));

    public static Diagnostic WaterCannotHavePh(SourceSpan span, string water, double ph, string substance, string explanation) => Error(
        "SEQ0836",
        span,
        FormattableString.Invariant($"no amount of {substance} gives the water `{water}` a pH of {ph:0.##}: {explanation}"),
        "its dissolved substances and its pH contradict each other, so every dose simulated with it would be wrong",
        "balance it by an ion of the other sign (an acid water by chloride, an alkaline one by sodium), or correct the amounts");

    public static Diagnostic MeasuresNothing(SourceSpan span, string tag, string what, string place) => Error(
        "SEQ0837",
        span,
        $"`{tag}` cannot measure {what} in `{place}`",
        "an instrument that sees nothing would read a constant and hide every fault",
        "name a place that has it: tanks have volume, level, pH, conductivity and temperature; reagents volume; lines flow; sample loops flow, pH and conductivity; pumps pressure and turns; agitators and feeders turns; drums and presses pressure and flow; seal water temperature and flow");

    public static Diagnostic NeedsRateOrOutlet(SourceSpan span, string line) => Error(
        "SEQ0838",
        span,
        $"line `{line}` needs one of `rate`, `outlet`, `pumped` and a feeder, an outlet only from a tank",
        "without it the flow is not known",
        "write `rate:` for a pump or steady inlet, `outlet: {bore: ..., coefficient: ...}` for a free outlet of a tank, `pumped:` with the pump's curve and the pipe, or a powder feeder in `through:`");

    public static Diagnostic NoPair(Placed<string> other, string tag, string why) => Error(
        "SEQ0839",
        other.Span,
        $"the wires of `{tag}` cannot be swapped with those of `{other.Value}`: {why}",
        "a pair that is no pair gives no fault, or one that undoes another",
        "name each pair once, at one of its two transmitters");

    /// <summary>A transmitter may say what it sees all the time; a switch would never turn.</summary>
    public static Diagnostic NeverMoves(SourceSpan span, string tag, string what, string place) => Error(
        "SEQ0840",
        span,
        $"`{tag}` would never turn: nothing in this plant changes {what} in `{place}`",
        "a switch that never turns would hide every fault",
        "let it watch turbidity in a tank or in a line from one, redox in a plant with chromium(VI) and sulphite or with cyanide and hypochlorite; or take it as a hand switch that a scenario operates");

    private static Diagnostic Error(string code, SourceSpan span, string message, string reason, string mend) =>
        new(code, Severity.Error, span, message, reason, mend);
}
