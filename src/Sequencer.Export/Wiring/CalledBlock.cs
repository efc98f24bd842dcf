using System.Collections.Immutable;
using Sequencer.Control.TransitionSystems;
using Sequencer.Text;

namespace Sequencer.Export.Wiring;

/// <summary>
/// A function block inside the program that calls it: what the program hands it, and whether it does there what it does by
/// itself. All expressions are of one builder and of the program's variables.
/// </summary>
internal sealed class CalledBlock
{
    /// <summary>Behind the name of an output's value in the scan before, where the block is read by itself.</summary>
    private const string LastMark = ".last";

    private readonly TransitionSystem _program;
    private readonly TransitionSystem _block;
    private readonly string _prefix;
    private readonly Dictionary<string, Expression> _values = new(StringComparer.OrdinalIgnoreCase);
    private readonly Dictionary<string, StateVariable> _states;
    private readonly ImmutableArray<Expression> _next;

    private CalledBlock(TransitionSystem program, TransitionSystem block, string prefix, ExpressionBuilder builder)
    {
        _program = program;
        _block = block;
        _prefix = prefix;
        Builder = builder;
        IReadOnlyList<Expression> all = Of([.. program.States.Select(state => state.Next), .. program.Outputs.Select(output => output.Value), .. program.Definitions.Select(one => one.Value)]);
        _next = [.. all.Take(program.States.Length)];
        Outputs = program.Outputs.Select((output, index) => (output.Name, Value: all[program.States.Length + index]))
            .ToImmutableDictionary(pair => pair.Name, pair => pair.Value, StringComparer.OrdinalIgnoreCase);
        _states = program.States.ToDictionary(state => state.Variable.Name, StringComparer.OrdinalIgnoreCase);
        for (int index = 0; index < program.States.Length; index++)
        {
            _values[program.States[index].Variable.Name] = _next[index];
        }

        for (int index = 0; index < program.Definitions.Length; index++)
        {
            _values[program.Definitions[index].Name] = all[program.States.Length + program.Outputs.Length + index];
        }
    }

    public ExpressionBuilder Builder { get; }

    /// <summary>Where what the program keeps begins.</summary>
    public Origin Origin => _program.States[0].Origin;

    /// <summary>What the program writes, by the names of its outputs.</summary>
    public ImmutableDictionary<string, Expression> Outputs { get; }

    /// <summary>The block in the program, by the names of what it says and keeps; null where there is none.</summary>
    public static CalledBlock? Find(TransitionSystem program, TransitionSystem block, ExpressionBuilder builder)
    {
        HashSet<string> names = new(program.States.Select(state => state.Variable.Name).Concat(program.Definitions.Select(one => one.Name)), StringComparer.OrdinalIgnoreCase);
        string[] own = [.. block.Outputs.Select(output => output.Name), .. block.States.Select(state => state.Variable.Name)];
        string? prefix = names
            .Where(name => name.EndsWith("." + own[0], StringComparison.OrdinalIgnoreCase))
            .Select(name => name[..^own[0].Length])
            .MaxBy(before => own.Count(name => names.Contains(before + name)));
        return prefix is null ? null : new CalledBlock(program, block, prefix, builder);
    }

    /// <summary>What the program hands to an input of the block, or takes from an output; null where it hands it nothing in every scan.</summary>
    public Expression? Value(string name) => _values.GetValueOrDefault(_prefix + name);

    /// <summary>A value kept by the program, and what it is behind the scan.</summary>
    public (StateVariable State, Expression Next) Kept(Variable variable) => (_program.States[variable.Index], _next[variable.Index]);

    /// <summary>
    /// What must be so in every scan for the block to do in the program what it does by itself, with the names of what is compared; where both are
    /// the same expression it is left out. Null and a name where the program keeps something in another way.
    /// </summary>
    public IEnumerable<(string Name, Expression Same)>? Differences(out string? missing)
    {
        Dictionary<Variable, Expression> images = [];
        missing = null;
        foreach (Variable input in _block.Inputs)
        {
            Variable? shared = _program.Inputs.FirstOrDefault(one => one.Name == input.Name && input.Name.Contains('.', StringComparison.Ordinal));
            Expression? handed = shared is null ? Value(input.Name) : Builder.Variable(shared);
            if (handed is null || _states.ContainsKey(_prefix + input.Name))
            {
                missing = input.Name;
                return null;
            }

            images.Add(input, handed);
        }

        foreach (StateVariable state in _block.States)
        {
            if (!_states.TryGetValue(_prefix + InProgram(state.Variable.Name), out StateVariable? kept) || kept.Initial != state.Initial || kept.Retained != state.Retained)
            {
                missing = state.Variable.Name;
                return null;
            }

            images.Add(state.Variable, Builder.Variable(kept.Variable));
        }

        (string Name, Expression Alone)[] alone = [.. _block.States.Select(state => (InProgram(state.Variable.Name), state.Next)), .. _block.Outputs.Select(output => (output.Name, output.Value))];
        IReadOnlyList<Expression> inside = Builder.Substitute([.. alone.Select(pair => pair.Alone)], images);
        List<(string Name, Expression Same)> differences = [];
        for (int index = 0; index < alone.Length; index++)
        {
            Expression? there = Value(alone[index].Name);
            if (there is null)
            {
                missing = alone[index].Name;
                return null;
            }

            if (there != inside[index])
            {
                differences.Add((alone[index].Name, Builder.Equal(there, inside[index])));
            }
        }

        return differences;
    }

    /// <summary>The program with one thing that must be so in every scan of it.</summary>
    public TransitionSystem WithRequirement(Requirement requirement) => TransitionSystem.Create(
        _program.Name,
        _program.ScanMilliseconds,
        _program.Inputs,
        [.. _program.States.Select((state, index) => state with { Next = _next[index] })],
        [],
        [],
        [],
        [requirement],
        []);

    /// <summary>An output whose value in the scan before is looked at has one name in the program and two where the block is read by itself.</summary>
    private string InProgram(string name) => IsLast(name) && !_states.ContainsKey(_prefix + name) ? name[..^LastMark.Length] : name;

    private static bool IsLast(string name) => name.EndsWith(LastMark, StringComparison.OrdinalIgnoreCase);

    private IReadOnlyList<Expression> Of(IReadOnlyList<Expression> values)
    {
        Dictionary<Variable, Expression> same = [];
        foreach (Variable variable in _program.Inputs.Concat(_program.States.Select(state => state.Variable)))
        {
            same.Add(variable, Builder.Variable(variable));
        }

        return Builder.Substitute(values, same);
    }
}
