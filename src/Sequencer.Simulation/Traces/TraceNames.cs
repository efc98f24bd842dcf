using System.Globalization;
using Sequencer.Control.TransitionSystems;
using Sequencer.Simulation.Metadata;
using Sequencer.Simulation.Words;
using Sequencer.Text;

namespace Sequencer.Simulation.Traces;

/// <summary>Variables of a system in the words of its program.</summary>
internal sealed class TraceNames(SiteMetadata site)
{
    /// <summary>A tag with what it stands for.</summary>
    public string Titled(string tag) => site.Signal(tag) is { Description.Length: > 0 } signal ? $"{tag} \"{signal.Description}\"" : tag;

    public string Step(string unit, string step) =>
        site.Step(unit, step) is { Title.Length: > 0 } named ? $"step {step} \"{named.Title}\"" : $"step {step}";

    /// <summary>A value in the unit of what it is a value of.</summary>
    public string Value(string name, Sort sort, long value) =>
        site.Signal(name) is { } signal && sort == Sort.Integer ? ValueWords.Of((double)(value * signal.Resolution), signal.Decimals, signal.Unit)
        : sort == Sort.Boolean ? value == 1 ? "true" : "false"
        : value.ToString(CultureInfo.InvariantCulture);

    /// <summary>What happened where an input took a value; its manual demand is told with it. What has failed does not show what comes in.</summary>
    public TraceHappening Input(TraceInput input, long value, bool hasFailed, Func<string, long?> inputNow)
    {
        bool isSo = value != input.Rest;
        return input.Kind switch
        {
            TraceInputKind.Contact when hasFailed => Signal($"{Titled(input.Tag)} ought to be {(isSo ? "so" : "not so")}"),
            TraceInputKind.Reading when hasFailed => Signal($"{Titled(input.Tag)} ought to read {Value(input.Name, input.Variable.Sort, value)}"),
            TraceInputKind.Failure => Signal($"{Titled(input.Tag)} fails"),
            TraceInputKind.Contact => Signal($"{Titled(input.Tag)} is {(isSo ? "so" : "not so")}"),
            TraceInputKind.Reading => Signal($"{Titled(input.Tag)} reads {Value(input.Name, input.Variable.Sort, value)}"),
            TraceInputKind.ChannelFault => Signal(isSo ? $"the channel of {input.Tag} fails" : $"the channel of {input.Tag} is good again"),
            TraceInputKind.Command => Operator($"{(isSo ? "presses" : "lets go of")} {Command(input.Tag)}"),
            TraceInputKind.Answer => Operator(isSo ? $"answers {input.Tag}: {Answer(input.Tag, value)}" : $"lets go of the answer to {input.Tag}"),
            TraceInputKind.Setting => Operator($"sets {input.Tag} to {Value(input.Name, input.Variable.Sort, value)}"),
            TraceInputKind.Manual when input.Name.EndsWith(".demand", StringComparison.Ordinal) =>
                Operator($"demands {Demand(input, value)} of {input.Tag} in manual"),
            TraceInputKind.Manual => Operator(isSo
                ? $"takes {input.Tag} into manual, {(inputNow(input.Name + ".demand") is 1 ? "on" : "off")}"
                : $"gives {input.Tag} back to automatic"),
            TraceInputKind.Power => Signal("power returns after a loss"),
            _ => Signal($"{input.Tag} is {Value(input.Name, input.Variable.Sort, value)}"),
        };
    }

    /// <summary>The title in the first words that made a thing; empty where there is none.</summary>
    public static string TitleOf(Origin origin)
    {
        string[] parts = origin.Span.Text.ToString().Split('\n')[0].Split('"');
        return parts.Length > 2 ? $" \"{parts[1]}\"" : "";
    }

    private string Demand(TraceInput input, long value) =>
        input.Variable.Sort == Sort.Boolean ? value == 1 ? "on" : "off" : Value(input.Tag, Sort.Integer, value);

    private string Answer(string prompt, long value) =>
        site.Prompts.FirstOrDefault(one => one.Name == prompt) is { } known && value > 0 && value <= known.Answers.Length
            ? known.Answers[(int)value - 1]
            : string.Create(CultureInfo.InvariantCulture, $"{value}, which is no answer");

    private static string Command(string name)
    {
        int dot = name.IndexOf('.', StringComparison.Ordinal);
        return dot < 0 ? name : $"{name[(dot + 1)..]} of {name[..dot]}";
    }

    private static TraceHappening Operator(string words) => new(TraceHappeningKind.Operator, "the operator " + words);

    private static TraceHappening Signal(string words) => new(TraceHappeningKind.Signal, words);
}
