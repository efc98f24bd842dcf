using System.Collections.Immutable;
using Sequencer.Control.Traces;
using Sequencer.Control.TransitionSystems;
using Sequencer.Proof.BitBlasting;
using Sequencer.Proof.Runs;
using Sequencer.Proof.Satisfiability;
using Sequencer.Proof.Slicing;

namespace Sequencer.Proof.Reaching;

/// <summary>A few scans of the slice in gates, asked from one exact state after the other.</summary>
internal sealed class Outlook
{
    private const int ScansOnward = 4;

    private readonly Slice _slice;
    private readonly SearchRun _run;
    private readonly Solver _solver;
    private readonly Circuit _circuit;
    private readonly List<Scan> _scans = [];
    private readonly Literal _fails;
    private readonly HashSet<string> _seen = new(StringComparer.Ordinal);

    public Outlook(Slice slice, Budget budget)
    {
        _slice = slice;
        Expression assumed = slice.Builder.And(slice.System.Assumptions.Select(assumption => assumption.Holds));
        _run = new SearchRun(slice.System, assumed, slice.Requirement.Holds, []);
        _solver = new Solver(budget);
        _circuit = new Circuit(_solver);
        List<Literal> broken = [];
        for (int scan = 0; scan < ScansOnward; scan++)
        {
            _scans.Add(scan == 0 ? Scan.FromAnywhere(_circuit, slice.System) : _scans[^1].Following());
            _solver.AddClause(_scans[^1].Encoding.Boolean(assumed));
            broken.Add(!_scans[^1].Encoding.Boolean(slice.Requirement.Holds));
        }

        _fails = _circuit.Or(broken);
    }

    public Trace? From(Trace beginning)
    {
        long[] states = [.. SearchRun.InitialStates(_slice.System)];
        List<TraceSegment> way = [];
        for (int segment = 0; segment < beginning.Segments.Length; segment++)
        {
            (ImmutableArray<long> inputs, int scans) = (beginning.Segments[segment].Inputs, beginning.Segments[segment].Scans);
            if (Onward(way, states) is { } found)
            {
                return found;
            }

            bool isLast = segment == beginning.Segments.Length - 1;
            foreach (int part in isLast && scans > 1 ? (int[])[scans - 1, 1] : [scans])
            {
                for (int left = part; left > 0;)
                {
                    int stride = _run.Stride(inputs.AsSpan(), states, left);
                    if (!_run.KeptAssumptions)
                    {
                        return null;
                    }

                    SearchRun.Append(way, inputs, stride);
                    left -= stride;
                    if (_run.BrokeRequirement)
                    {
                        return _run.UpToFailure(way);
                    }
                }

                if (isLast && Onward(way, states) is { } atEnd)
                {
                    return atEnd;
                }
            }
        }

        return null;
    }

    private Trace? Onward(List<TraceSegment> way, long[] states)
    {
        if (!_seen.Add(string.Join(',', states)) || !_solver.Solve([.. Exactly(states), _fails]))
        {
            return null;
        }

        List<TraceSegment> longer = [.. way];
        foreach (Scan scan in _scans)
        {
            SearchRun.Append(longer, scan.ModelInputs(), 1);
        }

        return _run.UpToFailure(longer);
    }

    private IEnumerable<Literal> Exactly(long[] states) => states.SelectMany((value, index) =>
    {
        BitVector vector = _scans[0].States[index];
        return vector.Width == 1 ? [vector.Bits[0].NegatedIf(value == 0)] : vector.Fixed(value).Where(bit => !_circuit.IsConstant(bit));
    });
}
