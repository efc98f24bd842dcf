using Sequencer.Text;

namespace Sequencer.Simulation.Loop;

/// <summary>What can be wrong where the program's terminals meet the plant's.</summary>
internal static class BindingDiagnostics
{
    public static Diagnostic InputNotMeasured(SourceSpan place, string tag, string device) => new(
        "SEQ0601",
        Severity.Error,
        place,
        $"the program reads `{tag}`, but the plant has no {device} of that tag",
        "the simulation would have to invent a reading, and its result would say nothing about the plant",
        $"describe the {device} `{tag}` in the plant description, or correct the tag in the program");

    public static Diagnostic OutputDrivesNothing(SourceSpan place, string tag) => new(
        "SEQ0602",
        Severity.Warning,
        place,
        $"the program writes `{tag}`, but nothing in the plant is driven by it",
        "whatever the program does with this output has no effect in the simulation",
        $"describe the motor or valve `{tag}` in the plant description, or correct the tag");

    public static Diagnostic InstrumentNotRead(SourceSpan place, string tag) => new(
        "SEQ0603",
        Severity.Information,
        place,
        $"the plant has the instrument `{tag}`, but no program reads it",
        "an instrument that nobody reads protects nothing",
        $"declare the input `{tag}` in a program, or take it out of the plant description if it is local only");

    public static Diagnostic SettingWithoutDefault(SourceSpan place, string parameter) => new(
        "SEQ0604",
        Severity.Error,
        place,
        $"the parameter `{parameter}` has no value before an operator sets it",
        "a batch that starts with an unknown setting cannot be simulated",
        $"give `{parameter}` a default in the program, or a value under `settings` in the scenario");

    public static Diagnostic RangesDiffer(SourceSpan place, string tag, string program, string plant) => new(
        "SEQ0605",
        Severity.Error,
        place,
        $"`{tag}` is `{program}` in the program, but its transmitter sends 4 to 20 mA for `{plant}`",
        "every reading would be scaled wrongly, and every limit on it would act at another value than written",
        "give the input and the transmitter the same range and unit");
}
