using System.Collections.Immutable;
using Sequencer.Control.TransitionSystems;

namespace Sequencer.Simulation.Traces;

/// <summary>Why the last scan of a run ends it: what each thing is that the statement names, and how outputs came to be so.</summary>
internal static class TraceReasons
{
    public static ImmutableArray<string> Of(TraceStory story)
    {
        TraceNames names = new(story.Site);
        List<string> reasons = [.. story.Outputs.Where(output => story.IsNamed(output.Name)).Select(output => OutputIs(story, names, output))];
        foreach (TraceInput input in story.Inputs.Where(input => story.IsNamed(input.Tag)))
        {
            long value = story.History.Input(input.Variable.Index).At(story.Scans);
            if (input.Kind is TraceInputKind.Contact or TraceInputKind.Reading)
            {
                reasons.Add(names.Input(input, value, story.HasFailed(input.Tag, story.Scans), _ => null).Words);
            }
            else if (input.Kind == TraceInputKind.ChannelFault && value != input.Rest)
            {
                reasons.Add($"the channel of {input.Tag} is bad");
            }
        }

        foreach (StateVariable state in story.History.System.States.Where(state => state.Variable.Sort == Sort.Boolean && IsLatch(state) && story.IsNamed(Stem(state))))
        {
            bool isSet = story.History.State(state.Variable.Index).At(story.Scans) == 1;
            reasons.Add($"{Stem(state)}{TraceNames.TitleOf(state.Origin)} is {(isSet ? "set" : "not set")}");
        }

        return [.. reasons];
    }

    private static string OutputIs(TraceStory story, TraceNames names, OutputVariable output)
    {
        long value = story.History.Output(story.History.System.Outputs.IndexOf(output)).At(story.Scans);
        if (output.Value.Sort != Sort.Boolean)
        {
            return $"{names.Titled(output.Name)} is {names.Value(output.Name, Sort.Integer, value)}";
        }

        (Definition Definition, bool IsBlocking)[] interlocks = [.. TraceParts.InterlocksOf(story, output)];
        string[] blocking = [.. interlocks.Where(interlock => interlock.IsBlocking).Select(interlock => Short(interlock.Definition))];
        string[] others = [.. interlocks.Where(interlock => !interlock.IsBlocking).Select(interlock => Short(interlock.Definition))];
        string on = value == 1 ? "on" : "off";
        string is_ = story.HasFailed(output.Name, story.Scans)
            ? $"{names.Titled(output.Name)} has failed and is not where it is told to be; it is told to be {on}"
            : $"{names.Titled(output.Name)} is {on}";
        string blocks = blocking.Length > 0 ? $"; {Listed(blocking)} block{(blocking.Length == 1 ? "s" : "")} it"
            : value == 0 || others.Length == 0 ? ""
            : $"; {Listed(others)} {(others.Length == 1 ? "does" : "do")} not block it";
        return is_ + Demand(story, output) + blocks;
    }

    private static string Demand(TraceStory story, OutputVariable output)
    {
        if (story.Inputs.Any(input => input.Name == output.Name + ".manual" && story.History.Input(input.Variable.Index).At(story.Scans) == 1))
        {
            return ": the operator has it in manual";
        }

        string[] asking = [.. story.History.System.Definitions
            .Where(definition => Asks(definition, output.Name) && story.History.Definition(definition.Name)?.At(story.Scans) == 1)
            .Select(definition => definition.Name[..definition.Name.LastIndexOf('.')].Split('.') is [.., var unit, var step, _] ? $"{step.Replace("step", "step ", StringComparison.Ordinal)} of {unit}" : definition.Name)
            .Distinct()];
        bool demanded = story.History.Definition(output.Name + ".demand")?.At(story.Scans) == 1;
        return asking.Length > 0 ? $": {Listed(asking)} {(asking.Length == 1 ? "asks" : "ask")} for it"
            : demanded ? ": it is on at rest"
            : ": nothing asks for it";
    }

    private static bool Asks(Definition definition, string output)
    {
        string[] parts = definition.Name.Split('.');
        return parts is [.., var subject, "asks" or "gives"] && (subject == output || subject == "dose_" + output || subject.StartsWith(output + "_", StringComparison.Ordinal));
    }

    private static string Short(Definition definition) => definition.Name[..definition.Name.LastIndexOf('.')];

    private static string Listed(string[] names) => names.Length == 1 ? names[0] : $"{string.Join(", ", names[..^1])} and {names[^1]}";

    private static bool IsLatch(StateVariable state) =>
        state.Purpose == StatePurpose.Control && state.Variable.Name[(state.Variable.Name.LastIndexOf('.') + 1)..] is var last && (last == "latched" || char.IsAsciiLetterUpper(last[0]));

    private static string Stem(StateVariable state) =>
        state.Variable.Name.EndsWith(".latched", StringComparison.Ordinal) ? state.Variable.Name[..^".latched".Length] : state.Variable.Name;
}
