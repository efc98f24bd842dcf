using Sequencer.Control.TransitionSystems;
using Sequencer.Proof.Runs;
using Sequencer.Proof.Satisfiability;

namespace Sequencer.Proof.ClauseLearning;

/// <summary>
/// The facts of a state that learnt clauses may speak of: Boolean states, and comparisons of integer
/// states. It only grows.
/// </summary>
internal sealed class FactTable
{
    private readonly ExpressionBuilder _builder;
    private readonly Dictionary<Expression, int> _numbers = [];
    private readonly List<Expression> _facts = [];
    private readonly List<HashSet<int>> _supports = [];
    private AffineScan? _scan;

    public FactTable(ExpressionBuilder builder)
    {
        _builder = builder;
    }

    public IReadOnlyList<Expression> Facts => _facts;

    public int Count => _facts.Count;

    /// <summary>The indices of the states that a fact reads.</summary>
    public IReadOnlySet<int> Support(int fact) => _supports[fact];

    /// <summary>Takes the fact in unless it, or its negation, is known or constant.</summary>
    public bool Add(Expression fact)
    {
        if (fact.IsConstant || _numbers.ContainsKey(fact) || _numbers.ContainsKey(_builder.Not(fact)))
        {
            return false;
        }

        _numbers.Add(fact, _facts.Count);
        _facts.Add(fact);
        _supports.Add([.. ExpressionGraph.Variables([fact]).Select(variable => variable.Index)]);
        _scan = null;
        return true;
    }

    /// <summary>The literal of a fact that is not constant, taken in if it is new.</summary>
    public Literal LiteralOf(Expression fact)
    {
        Add(fact);
        return _numbers.TryGetValue(fact, out int number) ? Literal.Of(number) : Literal.Of(_numbers[_builder.Not(fact)], true);
    }

    /// <summary>Takes in "the sum of factor times variable is at most the limit".</summary>
    public bool AddAtMost(IEnumerable<(Expression Variable, long Factor)> terms, long limit) =>
        Add(_builder.LessOrEqual(_builder.Add(terms.Select(term => _builder.Scale(term.Factor, term.Variable))), _builder.Constant(limit)));

    public bool AddEqual(Expression variable, long value) => Add(_builder.Equal(variable, _builder.Constant(value)));

    /// <summary>The truth of every fact in a state.</summary>
    public bool[] Values(ReadOnlySpan<long> states)
    {
        _scan ??= new AffineScan(_facts);
        _scan.Evaluate([], states);
        bool[] values = new bool[_facts.Count];
        for (int number = 0; number < values.Length; number++)
        {
            values[number] = _scan.Value(_scan.PlaceOf(_facts[number])) != 0;
        }

        return values;
    }

    public static bool Satisfies(bool[] values, Literal literal) => values[literal.Variable] != literal.IsNegated;

    public static bool Satisfies(bool[] values, Cube cube) => Array.TrueForAll(cube.Literals, literal => Satisfies(values, literal));

    /// <summary>The cube as an expression.</summary>
    public Expression Meaning(Cube cube) =>
        _builder.And(cube.Literals.Select(literal => literal.IsNegated ? _builder.Not(_facts[literal.Variable]) : _facts[literal.Variable]));
}
