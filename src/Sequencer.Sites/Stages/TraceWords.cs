using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using Sequencer.Control.Execution;
using Sequencer.Control.Traces;
using Sequencer.Control.TransitionSystems;
using Sequencer.Proof;

namespace Sequencer.Sites.Stages;

/// <summary>
/// A failing run in words: when each stretch of equal inputs begins, which inputs change, and which
/// states, outputs and facts change with them.
/// </summary>
internal static class TraceWords
{
    private const int MostChanges = 24;

    public static string Write(TransitionSystem system, Requirement requirement, Fails fails)
    {
        Facts facts = new(system);
        Interpreter interpreter = new(system, facts.Observed);
        StringBuilder text = new();
        text.Append(CultureInfo.InvariantCulture, $"broken in scan {fails.Trace.Scans} ({Seconds(system, fails.Trace.Scans)} after power-up)\n");
        long scan = 0;
        long[] inputs = [];
        foreach (TraceSegment segment in fails.Trace.Segments)
        {
            text.Append(CultureInfo.InvariantCulture, $"scan {scan + 1}{(segment.Scans > 1 ? $" to {scan + segment.Scans}" : "")}: ");
            long[] before = inputs;
            inputs = [.. segment.Inputs];
            inputs.CopyTo(interpreter.Inputs, 0);
            for (int count = 0; count < segment.Scans; count++)
            {
                long[] states = [.. interpreter.States];
                long[] outputs = [.. interpreter.Outputs];
                interpreter.Step();
                scan++;
                if (count == 0)
                {
                    text.Append(Inputs(system, before, segment, facts, interpreter)).Append('\n');
                }

                string changes = Changes(system, states, outputs, interpreter);
                if (changes.Length > 0)
                {
                    text.Append(CultureInfo.InvariantCulture, $"  scan {scan}: {changes}\n");
                }
            }
        }

        text.Append(CultureInfo.InvariantCulture, $"in scan {scan}: {requirement.Statement} is broken\n");
        return text.ToString();
    }

    /// <summary>
    /// The inputs that differ from rest, later those that change. A contact is told as the fact it stands
    /// for, since what a raw bit means depends on its wiring.
    /// </summary>
    private static string Inputs(TransitionSystem system, long[] before, TraceSegment segment, Facts facts, Interpreter interpreter)
    {
        List<string> words = [];
        for (int index = 0; index < segment.Inputs.Length; index++)
        {
            long value = segment.Inputs[index];
            string name = system.Inputs[index].Name;
            if (facts.PlaceOf(index) is int place)
            {
                bool isSo = interpreter.Observed[place] == 1;
                if (before.Length == 0 ? isSo : value != before[index])
                {
                    words.Add($"{name[..^Facts.Contact.Length]} is {(isSo ? "true" : "false")}");
                }
            }
            else if (before.Length == 0 ? value != Resting(system.Inputs[index]) : value != before[index])
            {
                words.Add($"{name} = {Value(system.Inputs[index].Sort, value)}");
            }
        }

        return words.Count == 0 ? "inputs at rest" : string.Join(", ", words);
    }

    /// <summary>Clocks tick in every scan and are left out; what they bring about is told.</summary>
    private static string Changes(TransitionSystem system, long[] states, long[] outputs, Interpreter interpreter)
    {
        List<string> words = [];
        for (int index = 0; index < outputs.Length; index++)
        {
            if (outputs[index] != interpreter.Outputs[index])
            {
                words.Add($"{system.Outputs[index].Name} {(interpreter.Outputs[index] == 1 ? "on" : "off")}");
            }
        }

        for (int index = 0; index < states.Length; index++)
        {
            Variable variable = system.States[index].Variable;
            bool told = variable.Sort == Sort.Boolean || variable.Name.EndsWith(".state", StringComparison.Ordinal);
            bool internalMemory = variable.Name.EndsWith(".last", StringComparison.Ordinal) || variable.Name.EndsWith(".before", StringComparison.Ordinal) || variable.Name.EndsWith(".ran", StringComparison.Ordinal);
            if (told && !internalMemory && system.States[index].Purpose == StatePurpose.Control && states[index] != interpreter.States[index])
            {
                words.Add($"{variable.Name} = {Value(variable.Sort, interpreter.States[index])}");
            }
        }

        string more = words.Count > MostChanges ? $" and {words.Count - MostChanges} more" : "";
        return string.Join(", ", words.Take(MostChanges)) + more;
    }

    private static long Resting(Variable input) => Math.Clamp(0, input.Range.Minimum, input.Range.Maximum);

    private static string Value(Sort sort, long value) => sort == Sort.Boolean
        ? value == 1 ? "true" : "false"
        : value.ToString(CultureInfo.InvariantCulture);

    private static string Seconds(TransitionSystem system, long scans) =>
        string.Create(CultureInfo.InvariantCulture, $"{scans * system.ScanMilliseconds / 1000.0:0.0} s");

    /// <summary>The named fact of each contact, to be observed.</summary>
    private sealed class Facts
    {
        public const string Contact = ".contact";
        private readonly Dictionary<int, int> _places = [];

        public Facts(TransitionSystem system)
        {
            Dictionary<string, Expression> definitions = new(StringComparer.Ordinal);
            foreach (Definition definition in system.Definitions)
            {
                definitions.TryAdd(definition.Name, definition.Value);
            }

            ImmutableArray<Expression>.Builder observed = ImmutableArray.CreateBuilder<Expression>();
            foreach (Variable input in system.Inputs.Where(input => input.Name.EndsWith(Contact, StringComparison.Ordinal)))
            {
                if (definitions.TryGetValue(input.Name[..^Contact.Length], out Expression? fact))
                {
                    _places.Add(input.Index, observed.Count);
                    observed.Add(fact);
                }
            }

            Observed = observed.ToImmutable();
        }

        public ImmutableArray<Expression> Observed { get; }

        public int? PlaceOf(int input) => _places.TryGetValue(input, out int place) ? place : null;
    }
}
