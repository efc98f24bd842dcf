using Sequencer.Language.Programs;
using Sequencer.Language.Units;

namespace Sequencer.Language.Rules.Analysis;

/// <summary>The arithmetic of a dose: wait, measure, pulse, over again.</summary>
internal static class Pulses
{
    /// <summary>From the start of the dose to the end of coarse pulse number <paramref name="count"/>.</summary>
    public static Duration TimeOf(DoseAction dose, int count) => new(count * (dose.Wait.Milliseconds + dose.Pulse.Milliseconds));

    public static Duration Shortest(DoseAction dose) =>
        dose.FinePulse is { } fine && fine.Milliseconds < dose.Pulse.Milliseconds ? fine : dose.Pulse;

    /// <summary>What a pulse of whole scans delivers, in litres; null where the output does not say how fast.</summary>
    public static Rational? LitresOf(DoseAction dose, Duration pulse, int scanMilliseconds) =>
        dose.Output.Delivery?.LitresPerSecond is { } rate ? rate * (pulse.Scans(scanMilliseconds) * scanMilliseconds) / 1000 : null;
}
