using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using Sequencer.Language.Programs;

namespace Sequencer.Sites.Insight;

/// <summary>The sheet of one unit's steps, as a page and as CSV.</summary>
internal static class StepPage
{
    public static string NameOf(UnitProgram unit, string extension) => $"insight/steps-{unit.Name}.{extension}";

    public static string Write(LoadedSite site, StepSheet sheet)
    {
        MarkdownPage page = new(site, $"{sheet.Unit.Name} \"{sheet.Unit.Title}\": each step against what may interrupt it");
        page.Paragraph(
            "Outputs that a cell does not name are off (closed, stopped). What is said to be off, or `on`, is *always* so, proved over all\n" +
            "states that the step can be in; `maybe` means that it depends on readings, clocks or other steps, and was not excluded. It is\n" +
            "taken that no output is in manual, nothing is overridden, no fault asks for anything, and no other button is pressed; what then\n" +
            "still may be on is what matters.");
        page.Heading("At rest");
        page.Table(["state", "outputs"], [.. sheet.Rests.Select(rest => (string[])[rest.Words, Outputs(rest.What)])]);
        string[] conditional =
        [
            .. sheet.Unit.Outputs.Where(output => output.Safe.While is not null || output.Safe.Last).Select(output => Rest(output, output.Safe, "at rest")),
            .. sheet.Unit.Outputs.Where(output => output.Held is { While: not null } or { Last: true }).Select(output => Rest(output, output.Held!, "while Holding, Held and Restarting")),
        ];
        if (conditional.Length > 0)
        {
            page.Paragraph(string.Join('\n', conditional));
        }

        page.Heading("Each step");
        page.Table(
            ["step", "at work", "hold", "while Held", "stop", "abort", "power comes back", "ends at the latest by", "requirements about its outputs"],
            [.. sheet.Rows.Select(row => (string[])
            [
                $"{Number(row.Step)} {row.Step.Title}",
                Outputs(row.Works),
                Event(row.Hold, row.Held),
                Outputs(row.Held),
                Event(row.Stop, null),
                Event(row.Abort, null),
                Event(row.PowerLoss, row.Held),
                Limit(row.Step),
                string.Join(", ", row.Requirements),
            ])]);
        if (!sheet.Sections.IsEmpty)
        {
            page.Heading("On the way between states");
            page.Table(
                ["step", "state", "at work", "ends at the latest by"],
                [.. sheet.Sections.Select(one => (string[])[$"{Number(one.Step)} {one.Step.Title}", one.Step.State.ToString(), Outputs(one.Works), Limit(one.Step)])]);
        }

        page.Heading("Instruments, step by step");
        page.Paragraph(
            "Listed is each instrument of the unit that the step looks at, and each reading whose loss is felt at once. `bad`: from the scan\n" +
            "on in which the reading counts as not usable, compared with the step at work; later effects of trips with delays are in the\n" +
            "table below. `frozen`: nothing tells the program; what waits for the instrument then waits until the limit of the step ends it.");
        page.Table(
            ["step", "instrument", "bad", "frozen, or stuck at an end"],
            [.. sheet.Instruments.Select(row => (string[])[Number(row.Step), row.Tag, Bad(row, sheet), Frozen(row, sheet)])]);
        page.Heading("What looks at each instrument, in every step");
        page.Table(
            ["instrument", "what it is", "interlocks, permissives", "trips", "others"],
            [.. sheet.Uses.Select(use => (string[])[use.Tag, use.Description, Join(use.Interlocks), Join(use.Trips), Join(use.Others)])]);
        Open(page, sheet);
        return page.Finish();
    }

    /// <summary>One line for each step, event and output.</summary>
    public static string Csv(StepSheet sheet)
    {
        StringBuilder text = new("unit,step,event,output,position,states\n");
        foreach (StepRow row in sheet.Rows)
        {
            foreach ((string words, Situation? what) in ((string, Situation?)[])
                [("at work", row.Works), ("hold", row.Hold), ("held", row.Held), ("stop", row.Stop), ("abort", row.Abort), ("power comes back", row.PowerLoss)])
            {
                foreach (Output output in what is null ? [] : sheet.Unit.Outputs)
                {
                    string position = what!.On.Contains(output.Tag) ? "on" : what.Maybe.Contains(output.Tag) ? "maybe" : "off";
                    text.Append(CultureInfo.InvariantCulture, $"{sheet.Unit.Name},{row.Step.Number},{words},{output.Tag},{position},{string.Join(' ', what.States)}\n");
                }
            }
        }

        return text.ToString();
    }

    private static void Open(MarkdownPage page, StepSheet sheet)
    {
        page.Heading("Left open for the hazard study");
        List<string> lines = [];
        foreach (StepRow row in sheet.Rows.Where(row => row.Step.Limit is { Reaction: Reaction.Alarm, GoTo: null }))
        {
            lines.Add($"* Step {Number(row.Step)} is ended by nothing but its ways out: its limit of {row.Step.Limit.Time} only alarms. Meanwhile: {Outputs(row.Works)}.");
        }

        foreach ((string steps, string outputs) in Alike(sheet, row => row.Held))
        {
            lines.Add($"* Held in step {steps}: {outputs}. {HeldFor(sheet.Unit)}");
        }

        foreach ((string steps, string outputs) in Alike(sheet, row => row.PowerLoss))
        {
            lines.Add($"* When the power comes back in step {steps}, before anybody has looked: {outputs}.");
        }

        foreach (InstrumentUse use in sheet.Uses.Where(use => !use.Alone.IsEmpty))
        {
            bool one = use.Alone.Length == 1;
            lines.Add($"* {Join(use.Alone)} {(one ? "looks" : "look")} at no instrument but {use.Tag}: where it sticks at what seems well, {(one ? "it does" : "they do")} not act.");
        }

        page.Paragraph(lines.Count == 0 ? "Nothing of the kinds that this page looks for." : string.Join('\n', lines));
    }

    /// <summary>The steps in which something may be on, together where it is the same.</summary>
    private static IEnumerable<(string Steps, string Outputs)> Alike(StepSheet sheet, Func<StepRow, Situation?> of) =>
        sheet.Rows.Where(row => of(row) is { } what && what.On.Length + what.Maybe.Length + what.Moved.Length > 0)
            .GroupBy(row => Outputs(of(row)), StringComparer.Ordinal)
            .Select(group => (Join(group.Select(row => Number(row.Step))), group.Key));

    private static string Rest(Output output, RestValue rest, string when)
    {
        (string on, string off) = output.Kind == OutputKind.Valve ? ("open", "closed") : ("running", "stopped");
        string Word(bool value) => value ? on : off;
        return rest.While is { } condition
            ? $"* {output.Tag} {when}: {Word(rest.Value)} while {condition.Span.Text.ToString().ReplaceLineEndings(" ")}, else {Word(rest.Otherwise)}."
            : $"* {output.Tag} {when}: as it was.";
    }

    private static string HeldFor(UnitProgram unit) => unit.HeldLimit is { } limit
        ? $"At most {limit.Time}, then {limit.Reaction.ToString().ToLowerInvariant()}."
        : "Nothing ends it but the operator.";

    private static string Bad(InstrumentRow row, StepSheet sheet)
    {
        if (!row.CanBeBad)
        {
            return "a switch: nothing tells";
        }

        if (row.Bad is null)
        {
            return "nothing asks whether it is usable";
        }

        Situation? works = sheet.Rows.First(one => one.Step == row.Step).Works;
        if (row.Leaves)
        {
            return $"{States(row.Bad)}; {Outputs(row.Bad)}";
        }

        string[] stopped = works is null ? [] : [.. row.Bad.StopsOf(works)];
        string outputs = stopped.Length == 0 ? "the outputs as at work" : $"{Join(stopped)} off, the others as at work";
        return $"the step goes on; {outputs}";
    }

    private static string Frozen(InstrumentRow row, StepSheet sheet)
    {
        Situation? works = sheet.Rows.First(one => one.Step == row.Step).Works;
        List<string> words = [];
        if (!row.Acts.IsEmpty)
        {
            words.Add($"{Join(row.Acts)} {(row.Acts.Length == 1 ? "follows" : "follow")} it");
        }

        if (!row.Waits.IsEmpty)
        {
            words.Add($"{Join(row.Waits)} may come wrongly or never; ended by {Limit(row.Step)}, meanwhile {Outputs(works)}");
        }

        return words.Count == 0 ? "the step does not look at it" : string.Join("; ", words);
    }

    private static string Limit(Step step) => step.Limit switch
    {
        { GoTo: { IsEmpty: true } } => $"{step.Limit.Time}: finish",
        { GoTo: { } targets } => $"{step.Limit.Time}: go {string.Join(", ", targets)}",
        { Reaction: Reaction.Alarm } => $"nothing ({step.Limit.Time}: alarm only)",
        _ => $"{step.Limit.Time}: {step.Limit.Reaction.ToString().ToLowerInvariant()}",
    };

    private static string Event(Situation? situation, Situation? held) => situation switch
    {
        null => "cannot be",
        _ when held is not null && Outputs(situation) == Outputs(held) => $"{States(situation)}; as while Held",
        _ => $"{States(situation)}; {Outputs(situation)}",
    };

    private static string States(Situation situation) => "to " + string.Join(" or ", situation.States);

    private static string Outputs(Situation? situation)
    {
        if (situation is null)
        {
            return "cannot be";
        }

        List<string> words = [];
        Add("on", situation.On);
        Add("maybe", situation.Maybe);
        Add("not at rest", situation.Moved);
        return words.Count == 0 ? "all off" : string.Join("; ", words);

        void Add(string how, ImmutableArray<string> tags)
        {
            if (!tags.IsEmpty)
            {
                words.Add($"{how} {Join(tags)}");
            }
        }
    }

    private static string Number(Step step) => step.Number.ToString(CultureInfo.InvariantCulture);

    private static string Join(IEnumerable<string> words) => string.Join(", ", words);
}
