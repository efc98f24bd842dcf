using System.Globalization;
using Sequencer.Language.Programs;

namespace Sequencer.Sites.Tuning;

/// <summary>
/// When a dose that is not answered ends. The program compares the reading at the begin of a pulse with that at the begin of the one before, and ends the dose when so
/// many pulses in a row moved it by less (spec/meaning.md, a dose). So of each so many pulses in a row one at least must have moved it further: the least of these
/// best ones is what the record gives; half of it keeps the dose of a weaker day going, and four times the noise is not reached by a probe that is dead.
/// </summary>
internal static class NoResponse
{
    private const string Setting = "no response";
    private const double ShareOfWeakest = 0.5;
    private const double TimesNoise = 4.0;
    private const int MostPulses = 8;

    /// <summary>Null where the program's figure is read from the plant.</summary>
    public static DoseProposal? Of(DoseTrend trend)
    {
        DoseAction dose = trend.Dose;
        if (Windows.Value(dose.NoResponseChange) is not { } now)
        {
            return null;
        }

        double factor = dose.Signal.Unit.Factor.ToDouble();
        double resolution = dose.Signal.Resolution.ToDouble() / factor;
        double change = now / factor;
        string unit = dose.Signal.Unit.Symbol;
        int pulses = dose.NoResponsePulses;
        string was = Text($"{change:0.###} {unit} in {pulses} pulses");
        if (trend.LeastOfBest(pulses) is not { } weakest)
        {
            return DoseProposal.Stays(Setting, was, Judgement.Undecided, Text($"the program compared {trend.Movements.Length} pulses with the one before, and {pulses} are needed to judge it"));
        }

        string seen = Text($"at the weakest {pulses} pulses in a row the best moved {dose.Signal.Tag} by {weakest:0.00#} {unit} until the next began, where the program asks for {change:0.###} {unit}");
        if (!trend.Response.IsDetermined)
        {
            return DoseProposal.Stays(Setting, was, Judgement.Undecided, $"{seen}; the noise is not known where dead time and lag are not determined");
        }

        double least = TimesNoise * trend.Response.Noise;
        string reason = Text($"{seen}; noise {trend.Response.Noise:0.00#} {unit}");
        FigureRange range = Range(trend, weakest, unit);
        if (change <= ShareOfWeakest * weakest && change >= least)
        {
            return DoseProposal.Stays(Setting, was, Judgement.Fits, reason) with { Range = range };
        }

        string wrong = change > ShareOfWeakest * weakest ? "a probe that works could be called dead on a weaker day" : Text($"under four times the noise ({least:0.00#} {unit}), a dead probe's noise could pass for an answer");
        for (int more = pulses; more <= MostPulses; more++)
        {
            double best = trend.LeastOfBest(more) ?? 0.0;
            double proposed = Math.Floor((ShareOfWeakest * best / resolution) + 1e-9) * resolution;
            if (proposed >= Math.Max(least, resolution))
            {
                return new DoseProposal(Setting, was, Text($"{proposed:0.###} {unit} in {more} pulses"), Judgement.Change, $"{reason}: {wrong}")
                {
                    Range = Range(trend, best, unit),
                    Weakens = more > pulses
                        ? Text($"{more - pulses} more {(more - pulses == 1 ? "pulse" : "pulses")} of {dose.Output.Tag} would be given into a reading that does not answer before the dose ends: review what so much reagent does when the probe is dead")
                        : proposed < change ? "a smaller movement passes for an answer: review how much reagent is given when the probe is dead or coated" : null,
                };
            }
        }

        return DoseProposal.Stays(Setting, was, Judgement.Undecided, Text($"{reason}: {wrong}; no figure in up to {MostPulses} pulses is at least four times the noise and at most half of what was seen, so none is proposed"));
    }

    /// <summary>A movement is the difference of two readings: its error is the noise times the root of two.</summary>
    private static FigureRange Range(DoseTrend trend, double weakest, string unit)
    {
        Plant.Response.Estimate movement = new(weakest, Math.Sqrt(2.0) * trend.Response.Noise);
        return new FigureRange(ShareOfWeakest * movement.Low, ShareOfWeakest * movement.High, unit);
    }

    private static string Text(FormattableString words) => words.ToString(CultureInfo.InvariantCulture);
}
