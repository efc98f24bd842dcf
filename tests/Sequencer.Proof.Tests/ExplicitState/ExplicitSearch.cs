using Sequencer.Control.Execution;
using Sequencer.Control.TransitionSystems;

namespace Sequencer.Proof.Tests.ExplicitState;

/// <summary>
/// Visits every reachable state, breadth first, by the interpreter with every combination of inputs:
/// the engine of another kind that the prover is held against.
/// </summary>
internal sealed class ExplicitSearch
{
    private readonly TransitionSystem _system;
    private readonly Interpreter _interpreter;
    private readonly List<long[]> _inputs;

    public ExplicitSearch(TransitionSystem system)
    {
        _system = system;
        _interpreter = new Interpreter(system, [.. system.Requirements.Select(requirement => requirement.Holds), .. system.Assumptions.Select(assumption => assumption.Holds)]);
        _inputs = [[]];
        foreach (Variable input in system.Inputs)
        {
            _inputs = [.. _inputs.SelectMany(chosen => Values(input.Range).Select(value => (long[])[.. chosen, value]))];
        }
    }

    /// <summary>How many states were reached by the last search that was not cut short.</summary>
    public int Reached { get; private set; }

    /// <summary>How many reached states have no scan that keeps the assumptions and changes anything.</summary>
    public int Dead { get; private set; }

    /// <summary>The number of scans of a shortest failing run of the first requirement, null if it holds.</summary>
    public int? ShortestFailure()
    {
        HashSet<string> seen = [];
        List<long[]> layer = [[.. _system.States.Select(state => state.Initial)]];
        seen.Add(Key(layer[0]));
        Dead = 0;
        for (int scans = 1; layer.Count > 0; scans++)
        {
            List<long[]> next = [];
            foreach (long[] state in layer)
            {
                if (Expand(state, seen, next))
                {
                    return scans;
                }
            }

            layer = next;
        }

        Reached = seen.Count;
        return null;
    }

    private static IEnumerable<long> Values(IntegerRange range)
    {
        for (long value = range.Minimum; value <= range.Maximum; value++)
        {
            yield return value;
        }
    }

    private static string Key(long[] state) => string.Join(',', state);

    private bool Expand(long[] state, HashSet<string> seen, List<long[]> next)
    {
        bool moves = false;
        foreach (long[] inputs in _inputs)
        {
            inputs.CopyTo(_interpreter.Inputs, 0);
            _interpreter.SetStates(state);
            _interpreter.Step();
            if (_interpreter.Observed.AsSpan(_system.Requirements.Length).IndexOf(0L) >= 0)
            {
                continue;
            }

            if (_interpreter.Observed[0] == 0)
            {
                return true;
            }

            moves |= !_interpreter.States.SequenceEqual(state);
            if (seen.Add(Key(_interpreter.States.ToArray())))
            {
                next.Add([.. _interpreter.States]);
            }
        }

        Dead += moves ? 0 : 1;
        return false;
    }
}
