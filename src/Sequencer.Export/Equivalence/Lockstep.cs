using System.Collections.Immutable;
using Sequencer.Control.Execution;
using Sequencer.Control.Traces;
using Sequencer.Control.TransitionSystems;

namespace Sequencer.Export.Equivalence;

/// <summary>
/// Runs two systems on the same random inputs, scan by scan, and compares every pair of outputs and of states
/// behind the scan. A test, not a proof: it finds differences, it does not exclude them.
/// </summary>
public sealed class Lockstep
{
    private readonly TransitionSystem _reference;
    private readonly TransitionSystem _other;
    private readonly IReadOnlyDictionary<string, string> _names;
    private readonly Stepper _left;
    private readonly Stepper _right;
    private readonly List<(int Left, int Right)> _inputs = [];
    private readonly List<(string Left, string Right, Func<long> LeftValue, Func<long> RightValue)> _pairs = [];
    private readonly List<string> _unpaired = [];

    /// <param name="reference">The system that was proved.</param>
    /// <param name="other">The system that was read.</param>
    /// <param name="names">The other's name of each name of the reference that is not the same in both.</param>
    public Lockstep(TransitionSystem reference, TransitionSystem other, IReadOnlyDictionary<string, string> names)
    {
        _reference = reference;
        _other = other;
        _names = names;
        _left = new Interpreter(reference);
        _right = new Interpreter(other, [.. other.Definitions.Select(definition => definition.Value)]);
        PairInputs();
        PairOutputs();
        PairStates();
    }

    public LockstepResult Run(long scans, int seed, CancellationToken cancellation = default)
    {
        _left.Initialise();
        _right.Initialise();
        RandomInputs random = new(_reference.Inputs, seed);
        TraceRecorder trace = new();
        LockstepDifference? difference = null;
        long scan = 0;
        while (scan < scans && difference is null)
        {
            cancellation.ThrowIfCancellationRequested();
            scan++;
            random.Next().CopyTo(_left.Inputs);
            foreach ((int left, int right) in _inputs)
            {
                _right.Inputs[right] = Math.Clamp(_left.Inputs[left], _other.Inputs[right].Range.Minimum, _other.Inputs[right].Range.Maximum);
                _left.Inputs[left] = _right.Inputs[right];
            }

            trace.Add(_left.Inputs);
            _left.Step();
            _right.Step();
            difference = FirstDifference(scan, trace);
        }

        return new LockstepResult(scan, [.. _pairs.Select(pair => pair.Left)], [.. _unpaired], difference);
    }

    /// <summary>The same on the inputs of a run: what the text writes and keeps is compared with the program in each of its scans.</summary>
    public LockstepResult Replay(Trace trace, CancellationToken cancellation = default)
    {
        TraceRecorder played = new();
        LockstepDifference? difference = null;
        long scans = TracePlayback.Play(trace, _left, (left, scan) =>
        {
            if (scan == 0)
            {
                _right.Initialise();
            }

            cancellation.ThrowIfCancellationRequested();
            foreach ((int own, int other) in _inputs)
            {
                _right.Inputs[other] = left.Inputs[own];
            }

            _right.Step();
            played.Add(left.Inputs);
            difference = FirstDifference(scan + 1, played);
            return difference is null;
        });
        return new LockstepResult(scans, [.. _pairs.Select(pair => pair.Left)], [.. _unpaired], difference);
    }

    private LockstepDifference? FirstDifference(long scan, TraceRecorder trace)
    {
        foreach ((string left, string right, Func<long> leftValue, Func<long> rightValue) in _pairs)
        {
            if (leftValue() != rightValue())
            {
                return new LockstepDifference(scan, left, right, leftValue(), rightValue(), trace.ToTrace());
            }
        }

        return null;
    }

    private string Image(string name) => _names.TryGetValue(name, out string? image) ? image : name;

    private void PairInputs()
    {
        HashSet<string> driven = new(StringComparer.OrdinalIgnoreCase);
        for (int index = 0; index < _reference.Inputs.Length; index++)
        {
            string image = Image(_reference.Inputs[index].Name);
            int place = Place(_other.Inputs, variable => variable.Name, image);
            if (place < 0)
            {
                _unpaired.Add($"input {_reference.Inputs[index].Name}");
            }
            else
            {
                driven.Add(image);
                _inputs.Add((index, place));
            }
        }

        _unpaired.AddRange(_other.Inputs.Where(variable => !driven.Contains(variable.Name)).Select(variable => $"input {variable.Name} of the other"));
    }

    private void PairOutputs()
    {
        for (int index = 0; index < _reference.Outputs.Length; index++)
        {
            int own = index;
            Pair("output", _reference.Outputs[index].Name, () => _left.Outputs[own]);
        }
    }

    private void PairStates()
    {
        for (int index = 0; index < _reference.States.Length; index++)
        {
            int own = index;
            if (_reference.States[index].Purpose == StatePurpose.Control)
            {
                Pair("state", _reference.States[index].Variable.Name, () => _left.States[own]);
            }
        }
    }

    private void Pair(string kind, string name, Func<long> value)
    {
        string image = Image(name);
        int output = Place(_other.Outputs, one => one.Name, image);
        int state = Place(_other.States, one => one.Variable.Name, image);
        int definition = Place(_other.Definitions, one => one.Name, image);
        if (kind == "output" && output >= 0)
        {
            _pairs.Add((name, image, value, () => _right.Outputs[output]));
        }
        else if (state >= 0)
        {
            _pairs.Add((name, image, value, () => _right.States[state]));
        }
        else if (definition >= 0)
        {
            _pairs.Add((name, image, value, () => _right.Observed[definition]));
        }
        else if (output >= 0)
        {
            _pairs.Add((name, image, value, () => _right.Outputs[output]));
        }
        else
        {
            _unpaired.Add($"{kind} {name}");
        }
    }

    /// <summary>The names of structured text do not differ by case.</summary>
    private static int Place<T>(ImmutableArray<T> items, Func<T, string> name, string wanted)
    {
        for (int index = 0; index < items.Length; index++)
        {
            if (string.Equals(name(items[index]), wanted, StringComparison.OrdinalIgnoreCase))
            {
                return index;
            }
        }

        return -1;
    }
}
