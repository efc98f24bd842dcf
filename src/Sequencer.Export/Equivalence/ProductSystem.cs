using System.Collections.Immutable;
using Sequencer.Control.Traces;
using Sequencer.Control.TransitionSystems;
using Sequencer.Export.Writing;
using Sequencer.Proof;
using Sequencer.Text;

namespace Sequencer.Export.Equivalence;

/// <summary>
/// A program and the text of one of its units side by side as one system with the same inputs. Its only requirement:
/// outputs, alarms and variables that both have are the same in every scan.
/// </summary>
internal sealed class ProductSystem
{
    private readonly TransitionSystem _reference;
    private readonly TransitionSystem _other;
    private readonly PairedNames _names;
    private readonly HashSet<Variable> _needed;
    private readonly VariableImages _images;
    private readonly List<PairedValue> _pairs = [];
    private readonly List<string> _unpaired = [];

    public ProductSystem(TransitionSystem reference, TransitionSystem other, ExportedBlock block)
    {
        _reference = reference;
        _other = other;
        _names = new PairedNames(block);
        _needed = NeededVariables.Of(reference, Roots());
        _images = new VariableImages(reference, other, _needed, _names, Builder);
        _unpaired.AddRange(_images.Unpaired);
        PairOutputs();
        PairAlarms();
        StateRelation relation = new(reference, other, block, _names, _images, Builder);
        PairStates(relation);
        Guesses = [.. _pairs.Where(IsOfStates).Select(Same), .. relation.Guesses()];
        System = Create(block);
    }

    public ExpressionBuilder Builder { get; } = new();

    public TransitionSystem System { get; }

    public Requirement Requirement => System.Requirements[0];

    public IReadOnlyList<PairedValue> Pairs => _pairs;

    /// <summary>What has no partner: with any of these nothing is called equal.</summary>
    public IReadOnlyList<string> Unpaired => _unpaired;

    /// <summary>How the states of both may be related in every run; to be checked.</summary>
    public ImmutableArray<Expression> Guesses { get; }

    /// <summary>The product's inputs as inputs of the program; one that the product has not is nearest 0.</summary>
    public ImmutableArray<long> ReferenceInputs(ImmutableArray<long> inputs)
    {
        long[] all = [.. _reference.Inputs.Select(input => Math.Clamp(0, input.Range.Minimum, input.Range.Maximum))];
        for (int index = 0; index < _images.ReferenceInputs.Count; index++)
        {
            all[_images.ReferenceInputs[index]] = inputs[index];
        }

        return [.. all];
    }

    /// <summary>A run of the program as one of the product.</summary>
    public Trace OfReference(Trace run) => new([.. run.Segments.Select(segment => segment with { Inputs = OfReference(segment.Inputs) })]);

    private ImmutableArray<long> OfReference(ImmutableArray<long> inputs) =>
    [
        .. System.Inputs.Select((input, index) => index < _images.ReferenceInputs.Count ? inputs[_images.ReferenceInputs[index]] : Math.Clamp(0, input.Range.Minimum, input.Range.Maximum)),
    ];

    /// <summary>
    /// In a scan in which the text does what our own text, read, does from the same states and inputs; null where they do not have the same variables. Since
    /// ours does what the program does that is as good as to compare with the program, and shorter: nearly all of the two texts is the same.
    /// </summary>
    /// <param name="own">What the reader makes of our own text.</param>
    /// <param name="names">What its variables are called in the text.</param>
    public AlikeScan? Alike(TransitionSystem own, Func<string, string> names)
    {
        Dictionary<Variable, Expression> images = [];
        foreach (Variable variable in (IEnumerable<Variable>)[.. own.Inputs, .. own.States.Select(state => state.Variable)])
        {
            Variable? partner = PairedNames.Find(variable.Role == VariableRole.Input ? _other.Inputs : _other.States.Select(state => state.Variable), one => one.Name, names(variable.Name));
            if (partner is null || !_images.Other.TryGetValue(partner, out Expression? image) || image.Sort != variable.Sort)
            {
                return null;
            }

            images.Add(variable, image);
        }

        (string Name, Expression Value)[] ours = [.. own.Outputs.Select(output => (output.Name, output.Value)), .. own.States.Select(state => (state.Variable.Name, state.Next))];
        (string Name, Expression Value)[] theirs = [.. _other.Outputs.Select(output => (output.Name, output.Value)), .. _other.States.Select(state => (state.Variable.Name, state.Next))];
        Dictionary<string, Expression> values = theirs.ToDictionary(one => one.Name, one => OfOther(one.Value), StringComparer.OrdinalIgnoreCase);
        if (ours.Length != theirs.Length || !ours.All(one => values.TryGetValue(names(one.Name), out Expression? other) && other.Sort == one.Value.Sort))
        {
            return null;
        }

        (Expression Ours, Expression Theirs)[] pairs = [.. ours.Zip(Builder.Substitute([.. ours.Select(one => one.Value)], images), (one, value) => (value, values[names(one.Name)]))];
        WhereApart apart = new(Builder);
        Array.ForEach(pairs, pair => apart.Compare(pair.Ours, pair.Theirs));
        return new AlikeScan(Builder.And(pairs.Select(pair => Builder.Equal(pair.Ours, pair.Theirs))), Builder.And(apart.Alike));
    }

    private IEnumerable<Expression> Roots() =>
    [
        .. _reference.Outputs.Where(output => _names.Image(output.Name) is not null).Select(output => output.Value),
        .. _reference.Alarms.Where(alarm => _names.Alarm(alarm.Name) is not null).Select(alarm => alarm.Raised),
        .. _reference.States.Where(state => state.Purpose != StatePurpose.Monitor && _names.Image(state.Variable.Name) is not null).Select(state => state.Next),
    ];

    private void PairOutputs()
    {
        foreach (OutputVariable output in _reference.Outputs)
        {
            // An output that this block never had is another block's.
            if (_names.Image(output.Name) is { } image)
            {
                OutputVariable? partner = PairedNames.Find(_other.Outputs, one => one.Name, image);
                Pair("output", output.Name, output.Value, output.Origin, partner?.Name, partner?.Value, partner?.Origin);
            }
        }
    }

    /// <summary>An alarm of the text that the program cannot raise must stay silent.</summary>
    private void PairAlarms()
    {
        HashSet<string> met = new(StringComparer.OrdinalIgnoreCase);
        foreach (Alarm alarm in _reference.Alarms)
        {
            if (_names.Alarm(alarm.Name) is { } image)
            {
                met.Add(image);
                OutputVariable? partner = PairedNames.Find(_other.Outputs, one => one.Name, image);
                Pair("alarm", alarm.Name, alarm.Raised, alarm.Origin, partner?.Name, partner?.Value, partner?.Origin);
            }
        }

        foreach (OutputVariable output in _other.Outputs.Where(output => !met.Contains(output.Name) && _pairs.All(pair => pair.Other != output.Name)))
        {
            if (output.Value.Sort != Sort.Boolean)
            {
                _unpaired.Add($"output {output.Name} of the text");
                continue;
            }

            _pairs.Add(new PairedValue("no alarm", output.Name, Builder.False, OfOther(output.Value), output.Origin, output.Origin));
        }
    }

    private void PairStates(StateRelation relation)
    {
        foreach (StateVariable state in _reference.States.Where(state => _needed.Contains(state.Variable)))
        {
            StateVariable? partner = PairedNames.Find(_other.States, one => one.Variable.Name, _names.Image(state.Variable.Name));
            if (partner is not null && partner.Variable.Sort == state.Variable.Sort)
            {
                _pairs.Add(new PairedValue(
                    state.Variable.Name, partner.Variable.Name, _images.Reference[state.Variable], _images.Other[partner.Variable], state.Origin, partner.Origin));
            }
            else if (!relation.Covers(state))
            {
                _unpaired.Add($"variable {state.Variable.Name}");
            }
        }
    }

    private void Pair(string kind, string name, Expression value, Origin origin, string? partner, Expression? partnerValue, Origin? partnerOrigin)
    {
        if (partner is null || partnerValue is null || partnerOrigin is null || partnerValue.Sort != value.Sort)
        {
            _unpaired.Add($"{kind} {name}");
        }
        else
        {
            _pairs.Add(new PairedValue($"{kind} {name}", partner, OfReference(value), OfOther(partnerValue), origin, partnerOrigin));
        }
    }

    private static bool IsOfStates(PairedValue pair) => pair.ReferenceValue.Variable?.Role == VariableRole.State && pair.OtherValue.Variable?.Role == VariableRole.State;

    private Expression Same(PairedValue pair) => Builder.Equal(pair.ReferenceValue, pair.OtherValue);

    private Expression OfReference(Expression value) => Builder.Substitute([value], _images.Reference)[0];

    private Expression OfOther(Expression value) => Builder.Substitute([value], _images.Other)[0];

    private TransitionSystem Create(ExportedBlock block)
    {
        StateVariable[] ours = [.. _reference.States.Where(state => _needed.Contains(state.Variable))];
        IReadOnlyList<Expression> next =
        [
            .. Builder.Substitute([.. ours.Select(state => state.Next)], _images.Reference),
            .. Builder.Substitute([.. _other.States.Select(state => state.Next)], _images.Other),
        ];
        Requirement requirement = new(
            $"export-{block.Unit}",
            $"the text of {block.FunctionBlock} does what the program of {block.Unit} does",
            FormattableString.Invariant($"{_pairs.Count} outputs, alarms and variables are the same in every scan"),
            RequirementKind.Never,
            Builder.And(_pairs.Select(Same)),
            _other.Outputs[0].Origin);
        Goal[] goals = [.. _reference.Goals.Where(goal => ExpressionGraph.Variables([goal.Reached, goal.Meanwhile]).All(_images.Reference.ContainsKey))];
        return TransitionSystem.Create(
            $"{_reference.Name}, {block.Unit} and its text",
            _reference.ScanMilliseconds,
            _images.Inputs,
            [.. ours.Concat(_other.States).Select((state, index) => state with { Variable = _images.States[index], Next = next[index] })],
            [],
            [],
            [],
            [requirement],
            [],
            [.. goals.Select(goal => goal with { Reached = OfReference(goal.Reached), Meanwhile = OfReference(goal.Meanwhile) })]);
    }
}
