using System.Globalization;
using Sequencer.Language.Programs;
using Sequencer.Language.Units;

namespace Sequencer.Language.Rules.Analysis;

/// <summary>
/// Whether a condition can be true, or false, for any value of what it looks at. Decided by trying:
/// switches, latches and the like both ways; the unit in each state that is named and in another; a
/// reading on, and one step of its resolution to either side of, each constant that it is compared with.
/// Comparisons with parameters or of several readings are taken as independent facts, <c>stays</c> and
/// edges as facts that need the condition inside them. Signals are taken as good. More than
/// <see cref="MostTrials"/> trials are not made; the answer is then that it can.
/// </summary>
internal sealed class ConditionTruth
{
    public const int MostTrials = 4096;

    private readonly List<Node> _nodes = [];
    private readonly Dictionary<(string Kind, string Children), int> _known = [];
    private readonly Dictionary<string, int> _variables = new(StringComparer.Ordinal);
    private readonly List<SortedSet<Rational>> _samples = [];

    private enum Shape
    {
        All,
        Any,
        Not,
        Constant,
        Compare,
        Equals,
        FactAndInside,
        FactOrInside,
        FactAndNotInside,
    }

    public static bool CanBe(Condition condition, bool value) => CanAllBe([(condition, value)]);

    public static bool IsConstant(Condition condition) => !CanBe(condition, true) || !CanBe(condition, false);

    /// <summary>Some values give each of the conditions the truth that stands beside it.</summary>
    public static bool CanAllBe(IReadOnlyList<(Condition Condition, bool Value)> wanted)
    {
        ConditionTruth truth = new();
        List<(int Node, bool Value)> roots = [.. wanted.Select(want => (truth.Build(want.Condition), want.Value))];
        long trials = 1;
        foreach (SortedSet<Rational> samples in truth._samples)
        {
            trials *= samples.Count;
            if (trials > MostTrials)
            {
                return true;
            }
        }

        return truth.Try(roots, trials);
    }

    private bool Try(List<(int Node, bool Value)> roots, long trials)
    {
        Rational[][] samples = [.. _samples.Select(set => set.ToArray())];
        Rational[] values = new Rational[samples.Length];
        bool[] results = new bool[_nodes.Count];
        for (long trial = 0; trial < trials; trial++)
        {
            long rest = trial;
            for (int variable = 0; variable < samples.Length; variable++)
            {
                values[variable] = samples[variable][rest % samples[variable].Length];
                rest /= samples[variable].Length;
            }

            for (int index = 0; index < results.Length; index++)
            {
                results[index] = Evaluate(_nodes[index], values, results);
            }

            if (roots.TrueForAll(root => results[root.Node] == root.Value))
            {
                return true;
            }
        }

        return false;
    }

    private static bool Evaluate(Node node, Rational[] values, bool[] results) => node.Shape switch
    {
        Shape.All => Array.TrueForAll(node.Children, child => results[child]),
        Shape.Any => Array.Exists(node.Children, child => results[child]),
        Shape.Not => !results[node.Children[0]],
        Shape.Constant => node.Bound.Sign != 0,
        Shape.Equals => values[node.Variable] == node.Bound,
        Shape.FactOrInside => values[node.Variable].Sign != 0 || results[node.Children[0]],
        Shape.FactAndInside => values[node.Variable].Sign != 0 && results[node.Children[0]],
        Shape.FactAndNotInside => values[node.Variable].Sign != 0 && !results[node.Children[0]],
        _ => node.Comparison switch
        {
            Comparison.Less => values[node.Variable] < node.Bound,
            Comparison.LessOrEqual => values[node.Variable] <= node.Bound,
            Comparison.Greater => values[node.Variable] > node.Bound,
            _ => values[node.Variable] >= node.Bound,
        },
    };

    private int Build(Condition root)
    {
        Stack<int> built = [];
        foreach (Condition condition in ConditionTree.ChildrenFirst(root))
        {
            int[] children = new int[ConditionTree.Children(condition).Length];
            for (int index = children.Length - 1; index >= 0; index--)
            {
                children[index] = built.Pop();
            }

            built.Push(Add(condition, children));
        }

        return built.Pop();
    }

    private int Add(Condition condition, int[] children)
    {
        switch (condition)
        {
            case AllOf:
                return Combine(Shape.All, "and", children);
            case AnyOf:
                return Combine(Shape.Any, "or", children);
            case VoteFact:
                return children[0];
            case Negation:
                return Combine(Shape.Not, "not", children);
            case StaysFact stays:
                return Timed(Shape.FactAndInside, string.Create(CultureInfo.InvariantCulture, $"stays {stays.Time.Milliseconds} {stays.AfterLastPulse}"), children);
            case LingersFact lingers:
                return Timed(Shape.FactOrInside, string.Create(CultureInfo.InvariantCulture, $"lingers {lingers.Time.Milliseconds}"), children);
            case DeadbandFact deadband:
                return Timed(Shape.FactOrInside, $"deadband {deadband.Keep.Right.Span.Text}", children);
            case EdgeFact edge:
                return Timed(edge.Rising ? Shape.FactAndInside : Shape.FactAndNotInside, edge.Rising ? "rising" : "falling", children);
            case ConstantCondition constant:
                return Keep(new Node(Shape.Constant, [], 0, constant.Value ? 1 : 0, default), constant.Value ? "true" : "false");
            case StateFact state:
                int variable = Variable($"{state.Unit} is", Rational.FromInt64(-1), Rational.FromInt64((long)state.State));
                return Keep(new Node(Shape.Equals, [], variable, (long)state.State, default), $"state {state.Unit} {state.State}");
            case AnsweredFact answered:
                int prompt = Variable("prompt " + answered.Prompt, Rational.Zero, Rational.FromInt64(answered.Answer));
                return Keep(new Node(Shape.Equals, [], prompt, answered.Answer, default), string.Create(CultureInfo.InvariantCulture, $"answer {answered.Prompt} {answered.Answer}"));
            case CompareFact compare:
                return Compare(compare.Left, compare.Comparison, compare.Right);
            case WithinFact within:
                return Combine(Shape.All, "and", [Compare(within.Value, Comparison.GreaterOrEqual, within.Lower), Compare(within.Value, Comparison.LessOrEqual, within.Upper)]);
            default:
                return Fact(NameOf(condition));
        }
    }

    private static string NameOf(Condition fact) => fact switch
    {
        SwitchFact switched => "switch " + switched.Input.Tag,
        LatchFact latch => "latch " + latch.Latch,
        TripFact trip => "trip " + trip.Trip,
        OwnerFact owner => $"owner {owner.Equipment} {owner.Unit}",
        StartedFact started => "started " + started.Unit,
        NamedFact named => "fact " + named.Fact,
        UsableFact usable => "usable " + usable.Input.Tag,
        DosedFact dosed => string.Create(CultureInfo.InvariantCulture, $"dosed {dosed.Output.Tag} {dosed.Step}"),
        OutputFact output => $"{output.Kind} {output.Output.Tag}",
        DutyFact duty => $"duty {duty.Pair} {duty.First}",
        OverrideFact waived => "overridden " + waived.Protection,
        StepFact step => string.Create(CultureInfo.InvariantCulture, $"step {step.Unit} {step.Step}"),
        _ => throw new ArgumentOutOfRangeException(nameof(fact), fact.GetType().Name, "no such condition"),
    };

    private int Compare(Quantity left, Comparison comparison, Quantity right)
    {
        LinearForm form = LinearForm.Difference(left, right);
        if (form.Terms is { Count: 1 } && form.Terms.First() is { Leaf: ReadingQuantity reading } term && (term.Factor == 1 || term.Factor == -1))
        {
            Rational bound = term.Factor.Sign > 0 ? -form.Constant : form.Constant;
            Comparison turned = term.Factor.Sign > 0 ? comparison : Mirrored(comparison);
            int variable = Variable(reading.Input.Tag, bound - reading.Input.Resolution, bound, bound + reading.Input.Resolution);
            return Keep(new Node(Shape.Compare, [], variable, bound, turned), $"{reading.Input.Tag} {turned} {bound}");
        }

        return comparison switch
        {
            Comparison.Less or Comparison.LessOrEqual => Fact($"{form.Key} {comparison} 0"),
            Comparison.Greater => Combine(Shape.Not, "not", [Fact($"{form.Key} {Comparison.LessOrEqual} 0")]),
            _ => Combine(Shape.Not, "not", [Fact($"{form.Key} {Comparison.Less} 0")]),
        };
    }

    private static Comparison Mirrored(Comparison comparison) => comparison switch
    {
        Comparison.Less => Comparison.Greater,
        Comparison.LessOrEqual => Comparison.GreaterOrEqual,
        Comparison.Greater => Comparison.Less,
        _ => Comparison.LessOrEqual,
    };

    private int Fact(string name) =>
        Keep(new Node(Shape.Equals, [], Variable(name, Rational.Zero, Rational.FromInt64(1)), 1, default), name);

    private int Timed(Shape shape, string kind, int[] children)
    {
        string name = string.Create(CultureInfo.InvariantCulture, $"{kind} of {children[0]}");
        return Keep(new Node(shape, children, Variable(name, Rational.Zero, Rational.FromInt64(1)), 1, default), name);
    }

    private int Combine(Shape shape, string kind, int[] children) =>
        Keep(new Node(shape, children, 0, default, default), kind + " " + string.Join(' ', children));

    /// <summary>Equal nodes get one place, so that equal conditions under <c>stays</c> and edges have one name.</summary>
    private int Keep(Node node, string key)
    {
        if (!_known.TryGetValue((node.Shape.ToString(), key), out int place))
        {
            place = _nodes.Count;
            _nodes.Add(node);
            _known.Add((node.Shape.ToString(), key), place);
        }

        return place;
    }

    private int Variable(string name, params ReadOnlySpan<Rational> samples)
    {
        if (!_variables.TryGetValue(name, out int variable))
        {
            variable = _samples.Count;
            _variables.Add(name, variable);
            _samples.Add([]);
        }

        foreach (Rational sample in samples)
        {
            _samples[variable].Add(sample);
        }

        return variable;
    }

    private sealed record Node(Shape Shape, int[] Children, int Variable, Rational Bound, Comparison Comparison);
}
