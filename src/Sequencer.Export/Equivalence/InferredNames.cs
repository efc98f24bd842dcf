using System.Collections.Immutable;
using Sequencer.Control.Execution;
using Sequencer.Control.TransitionSystems;
using Sequencer.Export.Writing;

namespace Sequencer.Export.Equivalence;

/// <summary>
/// What the variables of the text that we write are called in a text that somebody edited: the same where that text has the
/// name; else guessed. Inputs of one sort and range are paired in their order; outputs and states where they start alike, have
/// one range and did the same in every scan of a random run, again in their order. Where the numbers do not fit nothing is guessed.
/// A wrong guess makes a proof fail, never succeed.
/// </summary>
internal sealed class InferredNames
{
    private const int Scans = 2_000;
    private const int Seed = 7;
    private const string TimerMember = ".last";

    private readonly Dictionary<string, string> _images = new(StringComparer.OrdinalIgnoreCase);
    private readonly HashSet<string> _guessed = new(StringComparer.OrdinalIgnoreCase);

    /// <param name="own">What the reader makes of the text that we write.</param>
    /// <param name="other">What it makes of the edited one.</param>
    /// <param name="cancellation">Ends the random run.</param>
    public InferredNames(TransitionSystem own, TransitionSystem other, CancellationToken cancellation)
    {
        List<Variable> inputs = WithoutNamesake(own.Inputs, input => input.Name, other.Inputs);
        int before = _guessed.Count;
        Guess(inputs, Unmet(other.Inputs, input => input.Name), input => (input.Sort, input.Range), input => input.Name);
        HasGuessedInputs = _guessed.Count > before;
        List<OutputVariable> outputs = WithoutNamesake(own.Outputs, output => output.Name, other.Outputs);
        List<StateVariable> states = WithoutNamesake(own.States, state => state.Variable.Name, other.States);
        if (outputs.Count + states.Count == 0)
        {
            return;
        }

        (Stepper left, Stepper right) = (new Interpreter(own), new Interpreter(other));
        (int[] leftOutputs, int[] rightOutputs) = (new int[own.Outputs.Length], new int[other.Outputs.Length]);
        (int[] leftStates, int[] rightStates) = (new int[own.States.Length], new int[other.States.Length]);
        (int Left, int Right)[] driven = [.. own.Inputs.Select((input, index) => (index, Place(other.Inputs, Image(input.Name)))).Where(pair => pair.Item2 >= 0)];
        RandomInputs random = new(own.Inputs, Seed);
        left.Initialise();
        right.Initialise();
        for (int scan = 0; scan < Scans; scan++)
        {
            cancellation.ThrowIfCancellationRequested();
            random.Next().CopyTo(left.Inputs);
            foreach ((int from, int to) in driven)
            {
                right.Inputs[to] = left.Inputs[from];
            }

            left.Step();
            right.Step();
            Remember(leftOutputs, left.Outputs);
            Remember(rightOutputs, right.Outputs);
            Remember(leftStates, left.States);
            Remember(rightStates, right.States);
        }

        Guess(
            outputs, Unmet(other.Outputs, output => output.Name),
            output => (output.Value.Sort, own.Outputs.Contains(output) ? leftOutputs[own.Outputs.IndexOf(output)] : rightOutputs[other.Outputs.IndexOf(output)]),
            output => output.Name);
        Guess(
            states, Unmet(other.States, state => state.Variable.Name),
            state => (state.Variable.Sort, state.Variable.Range, state.Initial, own.States.Contains(state) ? leftStates[state.Variable.Index] : rightStates[state.Variable.Index]),
            state => state.Variable.Name);
    }

    /// <summary>Inputs were paired by more than their names: a difference may then be one of the pairing.</summary>
    public bool HasGuessedInputs { get; }

    /// <summary>Names of the edited text that were guessed, in pairs with ours.</summary>
    public IEnumerable<(string Own, string Other)> Guessed =>
        _guessed.Order(StringComparer.Ordinal).Select(own => (own, _images[own]));

    public bool IsGuessed(string other) => _guessed.Any(own => string.Equals(_images[own], other, StringComparison.OrdinalIgnoreCase));

    /// <summary>The block with the names that the edited text has.</summary>
    public ExportedBlock Renamed(ExportedBlock block) => block with
    {
        Variables = [.. block.Variables.Select(Renamed)],
        Copies = [.. block.Copies.Select(Renamed)],
        Steps = [.. block.Steps.Select(step => step with { Branch = Image(step.Branch), Copy = Image(step.Copy) })],
    };

    private ExportedVariable Renamed(ExportedVariable variable) => variable with { Name = Image(variable.Name) };

    /// <summary>A timer has no value of its own and is known by its members.</summary>
    public string Image(string name) =>
        _images.TryGetValue(name, out string? image) ? image
        : _images.TryGetValue(name + TimerMember, out string? member) && member.EndsWith(TimerMember, StringComparison.OrdinalIgnoreCase) ? member[..^TimerMember.Length]
        : name;

    private List<T> WithoutNamesake<T>(ImmutableArray<T> own, Func<T, string> name, ImmutableArray<T> others)
    {
        Dictionary<string, string> names = new(StringComparer.OrdinalIgnoreCase);
        foreach (T other in others)
        {
            names.TryAdd(name(other), name(other));
        }

        List<T> left = [];
        foreach (T one in own)
        {
            if (names.TryGetValue(name(one), out string? same))
            {
                _images[name(one)] = same;
            }
            else
            {
                left.Add(one);
            }
        }

        return left;
    }

    private List<T> Unmet<T>(ImmutableArray<T> others, Func<T, string> name)
    {
        HashSet<string> met = new(_images.Values, StringComparer.OrdinalIgnoreCase);
        return [.. others.Where(other => !met.Contains(name(other)))];
    }

    private void Guess<T, TKey>(List<T> own, List<T> others, Func<T, TKey> key, Func<T, string> name)
        where TKey : notnull
    {
        ILookup<TKey, T> byKey = others.ToLookup(key);
        foreach (IGrouping<TKey, T> alike in own.GroupBy(key))
        {
            T[] partners = [.. byKey[alike.Key]];
            if (partners.Length != alike.Count())
            {
                continue;
            }

            foreach ((T one, T other) in alike.Zip(partners))
            {
                _images[name(one)] = name(other);
                _guessed.Add(name(one));
            }
        }
    }

    private static int Place(ImmutableArray<Variable> variables, string name)
    {
        for (int index = 0; index < variables.Length; index++)
        {
            if (string.Equals(variables[index].Name, name, StringComparison.OrdinalIgnoreCase))
            {
                return index;
            }
        }

        return -1;
    }

    /// <summary>All values so far in one number.</summary>
    private static void Remember(int[] courses, ReadOnlySpan<long> values)
    {
        for (int index = 0; index < values.Length; index++)
        {
            courses[index] = HashCode.Combine(courses[index], values[index]);
        }
    }
}
