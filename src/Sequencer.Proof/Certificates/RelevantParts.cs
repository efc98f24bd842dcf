using Sequencer.Control.TransitionSystems;

namespace Sequencer.Proof.Certificates;

/// <summary>
/// The facts and ranges that can matter to a question: those that share a free state with it, directly or through other facts. The
/// others say nothing of the question's states and are true together initially, so to leave them out changes no answer.
/// </summary>
internal sealed class RelevantParts
{
    private readonly Dictionary<Variable, HashSet<Variable>> _given = [];
    private readonly List<(HashSet<Variable> Free, SmtTerm Fact)> _facts = [];
    private readonly Dictionary<Variable, List<int>> _factsOf = [];

    /// <param name="parts">The invariant; a given state stands for the free states that give it.</param>
    /// <param name="ranges">The states whose range is part of it, and the range.</param>
    public RelevantParts(IEnumerable<InvariantPart> parts, IEnumerable<(Variable State, SmtTerm Range)> ranges)
    {
        foreach (InvariantPart part in parts)
        {
            if (part.Given is { } state)
            {
                _given.Add(state, Free(part.Reads));
            }
            else
            {
                Add(Free(part.Reads), SmtTerm.Name(part.Whole.Name));
            }
        }

        foreach ((Variable state, SmtTerm range) in ranges)
        {
            Add(Free([state]), range);
        }
    }

    /// <summary>In their order.</summary>
    public IEnumerable<SmtTerm> To(IEnumerable<Variable> read)
    {
        SortedSet<int> relevant = [];
        HashSet<Variable> seen = Free(read);
        Stack<Variable> open = new(seen);
        while (open.TryPop(out Variable? state))
        {
            foreach (int fact in _factsOf.GetValueOrDefault(state, []).Where(relevant.Add))
            {
                foreach (Variable other in _facts[fact].Free.Where(seen.Add))
                {
                    open.Push(other);
                }
            }
        }

        return relevant.Select(fact => _facts[fact].Fact);
    }

    private void Add(HashSet<Variable> free, SmtTerm fact)
    {
        foreach (Variable state in free)
        {
            if (!_factsOf.TryGetValue(state, out List<int>? facts))
            {
                _factsOf.Add(state, facts = []);
            }

            facts.Add(_facts.Count);
        }

        _facts.Add((free, fact));
    }

    private HashSet<Variable> Free(IEnumerable<Variable> states) =>
        [.. states.Where(static variable => variable.Role == VariableRole.State).SelectMany(state => _given.TryGetValue(state, out HashSet<Variable>? free) ? free : [state])];
}
