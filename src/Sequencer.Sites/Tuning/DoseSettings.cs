using System.Globalization;
using Sequencer.Language.Units;
using Sequencer.Plant.Response;

namespace Sequencer.Sites.Tuning;

/// <summary>
/// From the answer to pulses to the settings of the dose. The rules are ours, each with its reason: wait until 95 % of a pulse shows; let one pulse near the end
/// move no more than half of the window that ends the dose; give the step half as long again as the dose took (<see cref="NoResponse"/> has its own). What rests on a
/// figure that is not determined is not proposed.
/// </summary>
internal static class DoseSettings
{
    private const double ShareOfWindow = 0.5;
    private const double LimitOverTime = 1.5;

    /// <summary>A limit under so much of the time that the dose takes is too short.</summary>
    private const double ShortLimit = 1.2;

    /// <summary>A wait is longer than it need be from so many times on.</summary>
    private const double LongWait = 1.6;
    private const int LastPulses = 3;
    private const double ShortestPulse = 0.5;

    public static IEnumerable<DoseProposal> Of(DoseTrend trend)
    {
        DoseProposal wait = Wait(trend);
        DoseProposal? pulse = Pulse(trend);
        yield return wait;
        if (pulse is not null)
        {
            yield return pulse;
        }

        if (NoResponse.Of(trend) is { } response)
        {
            yield return response;
        }

        yield return Limit(trend, wait, pulse);
    }

    /// <summary>Which of the figures that all rests on are not determined, in words; empty where all are.</summary>
    public static string NotDetermined(PulseResponse found) => string.Join("; ",
        new[] { ("dead time", found.DeadTimeSeconds), ("lag", found.LagSeconds), ("time until 95 % of a pulse shows", found.WaitSeconds) }
            .Where(figure => !figure.Item2.IsDetermined)
            .Select(figure => figure.Item2.IsFound
                ? Text($"{figure.Item1} {figure.Item2.Value:0.0} s with a standard error of {figure.Item2.StandardError:0.0} s, more than half of it")
                : Text($"{figure.Item1} {figure.Item2.Value:0.0} s, at the end of what is searched")));

    private static DoseProposal Wait(DoseTrend trend)
    {
        string words = trend.Dose.Wait.ToString();
        if (!trend.Response.IsDetermined)
        {
            return DoseProposal.Stays("wait", words, Judgement.Undecided, $"not determined: {NotDetermined(trend.Response)}");
        }

        double now = Seconds(trend.Dose.Wait);
        Estimate shown = trend.Response.WaitSeconds;
        double proposed = RoundUp(shown.High);
        FigureRange range = new(shown.Low, shown.High, "s");
        double seen = trend.Response.Shape.Share(trend.LastPulseSeconds + now, trend.LastPulseSeconds);
        string needed = Text($"95 % of a pulse shows {shown.Value:0} s after it (standard error {shown.StandardError:0.0} s); {seen * 100.0:0} % of it after the {words} of the program");
        return now < shown.Value
            ? new DoseProposal("wait", words, Words(proposed), Judgement.Change, $"{needed}: the next pulse is given before the last is seen") { Range = range }
            : now > LongWait * proposed
                ? new DoseProposal("wait", words, Words(proposed), Judgement.Change, Text($"{needed}: {(now - proposed) * trend.Given.Length / 60.0:0} min of the {trend.Given.Length} pulses recorded were waited for nothing"))
                {
                    Range = range,
                    Weakens = "pulses follow one another sooner, and less of each is seen before the next: review how far the reading may run past its target",
                }
                : DoseProposal.Stays("wait", words, Judgement.Fits, needed) with { Range = range };
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
        Estimate steepest = trend.SteepestPerSecond(LastPulses);
        if (!trend.Response.IsDetermined || !steepest.IsDetermined)
        {
            return DoseProposal.Stays(setting, now.ToString(), Judgement.Undecided, trend.Response.IsDetermined
                ? Text($"not determined: a second of the last pulses moved {trend.Dose.Signal.Tag} by {steepest.Value:0.000} with a standard error of {steepest.StandardError:0.000}, more than half of it")
                : "it rests on dead time and lag, which are not determined");
        }

        double moved = steepest.Value * Seconds(now);
        string unit = trend.Dose.Signal.Unit.Symbol;
        string reason = Text($"near the end one pulse of {now} moves {trend.Dose.Signal.Tag} by {moved:0.00#} {unit} (standard error {steepest.StandardError * Seconds(now):0.00#}); the narrowest window that ends the step is {window:0.00#} {unit} wide");
        double most = ShareOfWindow * window / steepest.Value;
        FigureRange? range = steepest.Low > 0.0 ? new FigureRange(ShareOfWindow * window / steepest.High, ShareOfWindow * window / steepest.Low, "s at most") : null;
        double proposed = Math.Floor(ShareOfWindow * window / steepest.High / ShortestPulse) * ShortestPulse;
        return most >= Seconds(now) ? DoseProposal.Stays(setting, now.ToString(), Judgement.Fits, reason) with { Range = range }
            : proposed < ShortestPulse ? DoseProposal.Stays(setting, now.ToString(), Judgement.Undecided, $"{reason}: more than half of it, and no pulse of half a second or more would do less; a weaker reagent or a smaller pump would")
            : new DoseProposal(setting, now.ToString(), Words(proposed), Judgement.Change, $"{reason}: more than half of it, so that a pulse can step across") { Range = range };
    }

    /// <summary>With the wait that the program would then have: a proposed one, else its own; never a wait that is only a bound.</summary>
    private static DoseProposal Limit(DoseTrend trend, DoseProposal wait, DoseProposal? pulse)
    {
        double now = Seconds(trend.Step.Limit.Time);
        string words = trend.Step.Limit.Time.ToString();
        Estimate shown = trend.Response.WaitSeconds;
        double rest = wait.IsChange ? RoundUp(shown.High) : Seconds(trend.Dose.Wait);
        double took = Took(trend, rest);
        string reason = Text($"the {trend.Given.Length} pulses of the stay, with {(wait.IsChange ? "the wait proposed" : $"the program's wait of {trend.Dose.Wait}")}, take {took / 60.0:0} min");
        if (now >= ShortLimit * took)
        {
            return DoseProposal.Stays("limit of the step", words, Judgement.Fits, reason);
        }

        string more = (wait.IsChange ? "" : "; that is a sum of what was recorded and has no error, but another water takes another number of pulses")
            + (pulse is { IsChange: true } ? "; smaller pulses take more of them, which is not in this figure" : "");
        return new DoseProposal("limit of the step", words, Words(LimitOf(took)), Judgement.Change, $"{reason}{more}: the step would end before the dose does, or nearly so")
        {
            Range = wait.IsChange ? new FigureRange(LimitOf(Took(trend, shown.Low)) / 60.0, LimitOf(Took(trend, shown.High)) / 60.0, "min") : null,
            Weakens = Text($"a longer limit lets the step go on dosing longer before it is noticed that the reading does not come: review what the step does at its limit, the dose's own maximum and what is dosed in {Words(LimitOf(took))}"),
        };
    }

    private static double Took(DoseTrend trend, double wait) => wait + trend.Given.Sum(pulse => pulse.Seconds + wait);

    private static double LimitOf(double took) => Math.Ceiling(LimitOverTime * took / 300.0) * 300.0;

    private static double RoundUp(double seconds) => Math.Ceiling(seconds / 5.0) * 5.0;

    private static double Seconds(Duration duration) => duration.Milliseconds / 1000.0;

    private static string Words(double seconds) => new Duration((long)Math.Round(seconds * 1000.0)).ToString();

    private static string Text(FormattableString words) => words.ToString(CultureInfo.InvariantCulture);
}
