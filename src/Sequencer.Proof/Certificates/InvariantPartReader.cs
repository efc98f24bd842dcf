using System.Collections.Immutable;
using System.Globalization;
using Sequencer.Control.TransitionSystems;

namespace Sequencer.Proof.Certificates;

/// <summary>
/// Reads the parts of the invariant out of a certificate that asks part by part: all that it defines before its first question. A
/// state is given once, by states that are free or were given before, and within its range.
/// </summary>
internal sealed class InvariantPartReader
{
    private readonly SmtExpressions _expressions = new();
    private readonly Dictionary<string, Variable> _states;
    private readonly HashSet<Variable> _given = [];
    private readonly HashSet<Variable> _read = [];
    private readonly ImmutableArray<InvariantPart>.Builder _parts = ImmutableArray.CreateBuilder<InvariantPart>();
    private readonly ImmutableArray<Expression>.Builder _facts = ImmutableArray.CreateBuilder<Expression>();
    private readonly List<SmtDefinition> _shared = [];

    public InvariantPartReader(TransitionSystem system)
    {
        _states = system.States.ToDictionary(state => $"|{state.Variable.Name}|", state => state.Variable, StringComparer.Ordinal);
        foreach ((string name, Variable state) in _states)
        {
            _expressions.Add(name, _expressions.Builder.Variable(state));
        }
    }

    public ImmutableArray<InvariantPart> Parts => _parts.ToImmutable();

    /// <summary>What each part says, in their order: a Boolean over the system's states.</summary>
    public ImmutableArray<Expression> Facts => _facts.ToImmutable();

    public Expression Invariant => _expressions.Builder.And(_facts);

    /// <summary>Takes the parts from a certificate's commands; a reason if they are not sound.</summary>
    public string Read(ImmutableArray<SmtTerm> commands)
    {
        foreach (SmtTerm command in commands.TakeWhile(static command => command.Items is not [{ Atom: "push" }, ..]))
        {
            if (command.Items is [{ Atom: "define-fun" }, { Atom: { } name }, { Atom: null, Items.Length: 0 }, { Atom: { } sort }, { } body]
                && Add(name, sort, body) is { Length: > 0 } problem)
            {
                return $"the definition of {name} in the invariant {problem}";
            }
        }

        return _parts.Count == 0 ? "there is no invariant in the text" : _shared.Count > 0 ? "the invariant ends in the middle of a part" : string.Empty;
    }

    private string Add(string name, string sort, SmtTerm body)
    {
        int number = _parts.Count + 1;
        if (!_expressions.TryTranslate(body, out Expression value, out string problem))
        {
            return problem;
        }

        if (sort != SmtText.SortName(value.Sort))
        {
            return $"is said to be of sort {sort}";
        }

        SmtDefinition definition = new(name[1..^1], value.Sort, body);
        if (name == $"|{InvariantPart.SharedPrefix(number)}{(_shared.Count + 1).ToString(CultureInfo.InvariantCulture)}|")
        {
            _expressions.Add(name, value);
            _shared.Add(definition);
            return string.Empty;
        }

        ImmutableArray<Variable> reads = Reads([.. _shared.Select(shared => shared.Body), body]);
        Variable? given = _states.GetValueOrDefault(name);
        problem = given is null ? Fact(name, number, value) : Given(given, value, reads);
        _read.UnionWith(reads);
        _parts.Add(new InvariantPart(given, [.. _shared], definition, reads));
        _shared.Clear();
        return problem;
    }

    private string Fact(string name, int number, Expression value)
    {
        _facts.Add(value);
        return name != $"|{InvariantPart.FactName(number)}|" ? "is out of its order" : value.Sort != Sort.Boolean ? "is no fact" : string.Empty;
    }

    private string Given(Variable state, Expression value, ImmutableArray<Variable> reads)
    {
        if (reads.Contains(state) || _read.Contains(state) || !_given.Add(state))
        {
            return "gives a state that is read or given before";
        }

        if (value.Sort != state.Sort || !state.Range.Contains(value.Range))
        {
            return "gives a state a value outside its range";
        }

        _facts.Add(_expressions.Builder.Equal(_expressions.Builder.Variable(state), value));
        return string.Empty;
    }

    /// <summary>The states that stand in the text, folded away by simplification or not.</summary>
    private ImmutableArray<Variable> Reads(IEnumerable<SmtTerm> terms)
    {
        HashSet<Variable> read = [];
        Stack<SmtTerm> open = new(terms);
        while (open.TryPop(out SmtTerm? term))
        {
            if (term.Atom is { } atom && _states.TryGetValue(atom, out Variable? state))
            {
                read.Add(state);
            }

            foreach (SmtTerm item in term.Items)
            {
                open.Push(item);
            }
        }

        return [.. read.OrderBy(state => state.Index)];
    }
}
