using System.Collections.Immutable;
using Sequencer.Control.Traces;
using Sequencer.Control.TransitionSystems;

namespace Sequencer.Proof.Reaching;

/// <summary>
/// States that copy an input now and then and otherwise keep their value, as a batch does with its settings: to have another value deep
/// in a run, the run must have that input from its start.
/// </summary>
internal sealed class BatchCopies
{
    private readonly Dictionary<int, int> _inputOf = [];

    public BatchCopies(TransitionSystem system)
    {
        for (int state = 0; state < system.States.Length; state++)
        {
            StateVariable copy = system.States[state];
            Expression[] cases = copy.Next.Kind == ExpressionKind.IfThenElse ? [.. copy.Next.Operands.Skip(1)] : [];
            Variable[] copied = [.. ExpressionGraph.Variables(cases.Where(one => one.Variable != copy.Variable))];
            if (cases.Any(one => one.Variable == copy.Variable) && copied is [{ Role: VariableRole.Input } input])
            {
                _inputOf.Add(state, input.Index);
            }
        }

        All = _inputOf.Keys.ToHashSet();
    }

    public IReadOnlySet<int> All { get; }

    public bool IsCopy(int state) => _inputOf.ContainsKey(state);

    /// <summary>The way, with the inputs that the states copy at the values given in every scan.</summary>
    public IEnumerable<TraceSegment> With(IEnumerable<TraceSegment> way, IReadOnlyDictionary<int, long> values) => way.Select(segment =>
    {
        ImmutableArray<long>.Builder inputs = segment.Inputs.ToBuilder();
        foreach ((int state, long value) in values)
        {
            inputs[_inputOf[state]] = value;
        }

        return segment with { Inputs = inputs.ToImmutable() };
    });
}
