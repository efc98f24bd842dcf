using System.Collections.Immutable;
using Sequencer.Control.TransitionSystems;

namespace Sequencer.Export.Equivalence;

/// <summary>The variables of the two systems as variables of one system, inputs of the same name shared.</summary>
internal sealed class VariableImages
{
    /// <summary>Before the names of the text's own variables; no program has such a name.</summary>
    private const string TextMark = "text:";

    private readonly ExpressionBuilder _builder;
    private readonly List<Variable> _inputs = [];
    private readonly List<Variable> _states = [];
    private readonly List<string> _unpaired = [];

    public VariableImages(TransitionSystem reference, TransitionSystem other, HashSet<Variable> needed, PairedNames names, ExpressionBuilder builder)
    {
        _builder = builder;
        foreach (Variable input in reference.Inputs)
        {
            Variable? partner = PairedNames.Find(other.Inputs, variable => variable.Name, names.Image(input.Name));
            if (partner is not null || needed.Contains(input))
            {
                Reference.Add(input, Place(input, _inputs, input.Name));
                ReferenceInputs.Add(input.Index);
                Pair(input, partner);
            }
        }

        foreach (Variable input in other.Inputs.Where(input => !Other.ContainsKey(input)))
        {
            Other.Add(input, Place(input, _inputs, TextMark + input.Name));
            _unpaired.Add($"input {input.Name} of the text");
        }

        foreach (StateVariable state in reference.States.Where(state => needed.Contains(state.Variable)))
        {
            Reference.Add(state.Variable, Place(state.Variable, _states, state.Variable.Name));
        }

        foreach (StateVariable state in other.States)
        {
            Other.Add(state.Variable, Place(state.Variable, _states, TextMark + state.Variable.Name));
        }
    }

    public Dictionary<Variable, Expression> Reference { get; } = [];

    public Dictionary<Variable, Expression> Other { get; } = [];

    /// <summary>The places in the program's system of the product's first inputs, in order.</summary>
    public List<int> ReferenceInputs { get; } = [];

    public ImmutableArray<Variable> Inputs => [.. _inputs];

    public ImmutableArray<Variable> States => [.. _states];

    public IReadOnlyList<string> Unpaired => _unpaired;

    /// <summary>A text that promises itself less of an input than the program does is no partner.</summary>
    private void Pair(Variable input, Variable? partner)
    {
        if (partner is null)
        {
            _unpaired.Add($"input {input.Name}");
        }
        else if (partner.Sort == input.Sort && partner.Range.Contains(input.Range))
        {
            Other.Add(partner, Reference[input]);
        }
    }

    private Expression Place(Variable variable, List<Variable> places, string name)
    {
        Variable placed = variable with { Index = places.Count, Name = name };
        places.Add(placed);
        return _builder.Variable(placed);
    }
}
