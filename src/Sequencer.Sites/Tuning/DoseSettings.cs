using System.Globalization;
using Sequencer.Language.Programs;
using Sequencer.Language.Units;

namespace Sequencer.Sites.Tuning;

/// <summary>
/// From the answer to pulses to the settings of the dose. The rules are ours, each with its reason: wait until 95 % of a pulse shows; let one pulse near the end
/// move no more than half of the window that ends the dose; call it no response at half of what the weakest pulses did, well above the
/// noise; give the step half as long again as the dose took.
/// </summary>
internal static class DoseSettings
{
    private const double ShareOfWindow = 0.5;
    private const double ShareOfWeakest = 0.5;
    private const double TimesNoise = 4.0;
    private const double LimitOverTime = 1.5;

    /// <summary>A limit under so much of the time that the dose takes is too short.</summary>
    private const double ShortLimit = 1.2;

    /// <summary>A wait is longer than it need be from so many times on.</summary>
    private const double LongWait = 1.6;
    private const int LastPulses = 3;
    private const int MostPulsesOfNoResponse = 8;

    public static IEnumerable<DoseProposal> Of(DoseTrend trend)
    {
        double wait = RoundUp(trend.Response.WaitSeconds(2.0));
        yield return Wait(trend, wait);
        if (Pulse(trend) is { } pulse)
        {
            yield return pulse;
        }

        if (NoResponse(trend) is { } response)
        {
            yield return response;
        }

        yield return Limit(trend, wait);
    }

    private static DoseProposal Wait(DoseTrend trend, double wait)
    {
        double now = Seconds(trend.Dose.Wait);
        double seen = trend.Response.Shape.Share(trend.LastPulseSeconds + now, trend.LastPulseSeconds);
        double likely = RoundUp(trend.Response.WaitSeconds(0.0));
        string needed = Text($"95 % of a pulse shows after {likely:0} s, at the far end of what dead time and lag may be after {wait:0} s; {seen * 100.0:0} % of it after the {Words(trend.Dose.Wait)} of the program");
        return now < likely ? new DoseProposal("wait", Words(trend.Dose.Wait), Words(wait), $"{needed}: the next pulse is given before the last is seen")
            : now > LongWait * wait ? new DoseProposal("wait", Words(trend.Dose.Wait), Words(wait), Text($"{needed}: {(now - wait) * trend.Response.Pulses.Length / 60.0:0} min of the {trend.Response.Pulses.Length} pulses recorded were waited for nothing"))
            : new DoseProposal("wait", Words(trend.Dose.Wait), Words(trend.Dose.Wait), needed);
    }

    /// <summary>The pulse given near the target: the fine one where there is one.</summary>
    private static DoseProposal? Pulse(DoseTrend trend)
    {
        if (Windows.Narrowest(trend.Unit, trend.Step, trend.Dose) is not { } window)
        {
            return null;
        }

        Duration now = trend.Dose.FinePulse ?? trend.Dose.Pulse;
        string setting = trend.Dose.FinePulse is null ? "pulse" : "fine pulse";
        double steepest = trend.SteepestPerSecond(LastPulses);
        double moved = steepest * Seconds(now);
        string unit = trend.Dose.Signal.Unit.Symbol;
        string reason = Text($"near the end one pulse of {Words(now)} moves {trend.Dose.Signal.Tag} by {moved:0.00#} {unit}; the narrowest window that ends the step is {window:0.00#} {unit} wide");
        double most = Math.Floor(ShareOfWindow * window / steepest * 2.0) / 2.0;
        return most >= Seconds(now) || most < 0.5
            ? new DoseProposal(setting, Words(now), Words(now), most < 0.5 ? $"{reason}: no pulse of half a second or more would fit; a weaker reagent or a smaller pump would" : reason)
            : new DoseProposal(setting, Words(now), Words(most), $"{reason}: it can step across");
    }

    private static DoseProposal? NoResponse(DoseTrend trend)
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
        double least = TimesNoise * trend.Response.Noise;
        string was = Text($"{change:0.###} {unit} in {dose.NoResponsePulses} pulses");
        double weakest = trend.LeastOf(dose.NoResponsePulses);
        string reason = Text($"the weakest {dose.NoResponsePulses} pulses in a row moved it by {weakest:0.00#} {unit}; noise {trend.Response.Noise:0.00#} {unit}");
        if (change <= ShareOfWeakest * weakest && change >= Math.Min(least, ShareOfWeakest * weakest))
        {
            return new DoseProposal("no response", was, was, reason);
        }

        for (int pulses = dose.NoResponsePulses; pulses <= MostPulsesOfNoResponse; pulses++)
        {
            double proposed = Math.Floor(ShareOfWeakest * trend.LeastOf(pulses) / resolution) * resolution;
            if (proposed >= Math.Max(least, resolution))
            {
                string mends = change > ShareOfWeakest * weakest ? "a probe that works could be called dead" : "noise alone could pass for an answer";
                return new DoseProposal("no response", was, Text($"{proposed:0.###} {unit} in {pulses} pulses"), $"{reason}: {mends}");
            }
        }

        return new DoseProposal("no response", was, was, $"{reason}: no change would tell them apart in {MostPulsesOfNoResponse} pulses");
    }

    private static DoseProposal Limit(DoseTrend trend, double wait)
    {
        double now = Seconds(trend.Step.Limit.Time);
        double took = wait + trend.Response.Pulses.Sum(pulse => pulse.Seconds + wait);
        string reason = Text($"{trend.Response.Pulses.Length} pulses as recorded, with that wait, take {took / 60.0:0} min");
        return now >= ShortLimit * took
            ? new DoseProposal("limit of the step", Words(trend.Step.Limit.Time), Words(trend.Step.Limit.Time), reason)
            : new DoseProposal("limit of the step", Words(trend.Step.Limit.Time), Words(Math.Ceiling(LimitOverTime * took / 300.0) * 300.0), $"{reason}: the step would end before the dose does");
    }

    private static double RoundUp(double seconds) => Math.Ceiling(seconds / 5.0) * 5.0;

    private static double Seconds(Duration duration) => duration.Milliseconds / 1000.0;

    private static string Words(Duration duration) => duration.ToString();

    private static string Words(double seconds) => new Duration((long)Math.Round(seconds * 1000.0)).ToString();

    private static string Text(FormattableString words) => words.ToString(CultureInfo.InvariantCulture);
}
