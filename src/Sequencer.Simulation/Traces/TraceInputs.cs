using System.Collections.Immutable;
using Sequencer.Control.Execution;
using Sequencer.Control.TransitionSystems;
using Sequencer.Simulation.Metadata;

namespace Sequencer.Simulation.Traces;

/// <summary>What each input of a system is, by its name and its site's description.</summary>
public static class TraceInputs
{
    private const string Contact = ".contact";
    private const string Fault = ".fault";
    private const string Setting = ".setting";
    private const string Manual = ".manual";
    private const string Demand = ".manual.demand";
    private const string Answer = ".input";
    private const string Before = ".before";
    private const string Fails = ".fails";
    private const string Power = "power.returned";

    /// <summary>One for each input, in the order of the system's.</summary>
    public static ImmutableArray<TraceInput> Of(TransitionSystem system, SiteMetadata site)
    {
        HashSet<string> openWhenSo = OpenWhenSo(system);
        HashSet<string> names = [.. system.Inputs.Select(input => input.Name)];
        HashSet<string> states = [.. system.States.Select(state => state.Variable.Name)];
        return [.. system.Inputs.Select(input => One(input, site, openWhenSo, names, states))];
    }

    private static TraceInput One(Variable input, SiteMetadata site, HashSet<string> openWhenSo, HashSet<string> names, HashSet<string> states)
    {
        string name = input.Name;
        long zero = Math.Clamp(0, input.Range.Minimum, input.Range.Maximum);
        if (name == Power)
        {
            return new TraceInput(input, TraceInputKind.Power, "power", 0, true);
        }

        if (Stem(Contact) is { } tag)
        {
            return new TraceInput(input, TraceInputKind.Contact, tag, openWhenSo.Contains(tag) ? 1 : 0, false);
        }

        if (Stem(Fault) is { } channel && names.Contains(channel))
        {
            return new TraceInput(input, TraceInputKind.ChannelFault, channel, 0, false);
        }

        if (names.Contains(name + Fault))
        {
            return new TraceInput(input, TraceInputKind.Reading, name, Middle(input), false);
        }

        if (Stem(Setting) is { } parameter)
        {
            SignalMetadata? signal = site.Signal(name);
            long? initial = signal?.Default is { } value ? (long)decimal.Round(value / signal.Resolution) : null;
            return new TraceInput(input, TraceInputKind.Setting, parameter, initial ?? zero, false);
        }

        if ((Stem(Demand) ?? Stem(Manual)) is { } output)
        {
            return new TraceInput(input, TraceInputKind.Manual, output, zero, false);
        }

        if (Stem(Answer) is { } prompt && site.Prompts.Any(one => one.Name == prompt))
        {
            return new TraceInput(input, TraceInputKind.Answer, prompt, zero, true);
        }

        if (Stem(Fails) is { } failing && states.Contains(failing + ".has_failed"))
        {
            return new TraceInput(input, TraceInputKind.Failure, failing, 0, true);
        }

        return states.Contains(name + Before)
            ? new TraceInput(input, TraceInputKind.Command, name, zero, true)
            : new TraceInput(input, TraceInputKind.Other, name, input.Sort == Sort.Integer ? Middle(input) : zero, false);

        string? Stem(string suffix) => name.EndsWith(suffix, StringComparison.Ordinal) ? name[..^suffix.Length] : null;
    }

    private static long Middle(Variable input) => input.Range.Minimum + ((input.Range.Maximum - input.Range.Minimum) / 2);

    /// <summary>The switches that are so while their contact is open: seen in a first scan, which no delay holds back.</summary>
    private static HashSet<string> OpenWhenSo(TransitionSystem system)
    {
        HashSet<string> tags = [.. system.Inputs.Where(input => input.Name.EndsWith(Contact, StringComparison.Ordinal)).Select(input => input.Name[..^Contact.Length])];
        Definition[] facts = [.. system.Definitions.Where(definition => tags.Contains(definition.Name))];
        Interpreter interpreter = new(system, [.. facts.Select(fact => fact.Value)]);
        foreach (Variable input in system.Inputs)
        {
            interpreter.Inputs[input.Index] = Math.Clamp(0, input.Range.Minimum, input.Range.Maximum);
        }

        interpreter.Step();
        return [.. facts.Where((_, place) => interpreter.Observed[place] == 1).Select(fact => fact.Name)];
    }
}
