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
    /// <param name="isLong">Whether many scans are wanted: both are compiled then, which takes a while.</param>
    public Lockstep(TransitionSystem reference, TransitionSystem other, IReadOnlyDictionary<string, string> names, bool isLong = false)
    {
        _reference = reference;
        _other = other;
        _names = names;
        ImmutableArray<Expression> observed = [.. other.Definitions.Select(definition => definition.Value)];
        _left = isLong ? new CompiledStepper(reference, []) : new Interpreter(reference);
        _right = isLong ? new CompiledStepper(other, observed) : new Interpreter(other, observed);
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
                _left.Inputs[left] = Math.Clamp(_left.Inputs[left], _other.Inputs[right].Range.Minimum, _other.Inputs[right].Range.Maximum);
            }

            difference = Step(scan, trace);
        }

        return new LockstepResult(scan, [.. _pairs.Select(pair => pair.Left)], [.. _unpaired], difference);
    }

    /// <summary>
    /// Goes a way of the program, and from its end on with the inputs that it ends with, of which one changes now and then: so it
    /// stays where the way leads, and what a step does is seen.
    /// </summary>
    /// <param name="way">A run of the program.</param>
    /// <param name="scans">How many scans at most behind its end.</param>
    /// <param name="between">In one of so many scans, on the average, an input changes; 0 is never.</param>
    /// <param name="seed">Of the random inputs.</param>
    /// <param name="cancellation">Ends the run.</param>
    public LockstepResult GoOnFrom(Trace way, long scans, int between, int seed, CancellationToken cancellation = default)
    {
        LockstepResult led = Replay(way, cancellation);
        TraceRecorder played = new();
        foreach (TraceSegment segment in way.Segments)
        {
            for (int repeat = 0; repeat < segment.Scans; repeat++)
            {
                played.Add(segment.Inputs.AsSpan());
            }
        }

        Random random = new(seed);
        LockstepDifference? difference = led.Difference;
        long scan = led.Scans;
        for (long more = 0; more < scans && difference is null; more++)
        {
            cancellation.ThrowIfCancellationRequested();
            scan++;
            if (between > 0 && random.Next(between) == 0)
            {
                Change(random, random.Next(_left.Inputs.Length));
            }

            difference = Step(scan, played);
        }

        return led with { Scans = scan, Difference = difference };
    }

    /// <summary>From the initial state with the inputs that somebody gives before each scan, until he gives none or the two differ.</summary>
    /// <param name="give">Changes the inputs of the scan before, which is told with its outputs; false ends the run.</param>
    /// <param name="cancellation">Ends the run.</param>
    public LockstepResult Follow(Func<long[], long[], bool> give, CancellationToken cancellation = default)
    {
        _left.Initialise();
        _right.Initialise();
        TraceRecorder played = new();
        LockstepDifference? difference = null;
        long scan = 0;
        while (difference is null && give(_left.Inputs, _left.Outputs))
        {
            cancellation.ThrowIfCancellationRequested();
            scan++;
            difference = Step(scan, played);
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

    /// <summary>One scan of both with the inputs that the program's has.</summary>
    private LockstepDifference? Step(long scan, TraceRecorder played)
    {
        foreach ((int own, int other) in _inputs)
        {
            _right.Inputs[other] = _left.Inputs[own];
        }

        played.Add(_left.Inputs);
        _left.Step();
        _right.Step();
        return FirstDifference(scan, played);
    }

    /// <summary>A switch turns over; a number walks a little or jumps.</summary>
    private void Change(Random random, int input)
    {
        IntegerRange range = _reference.Inputs[input].Range;
        long value = _left.Inputs[input];
        long step = Math.Max(1, (range.Maximum - range.Minimum) / 20);
        _left.Inputs[input] = range.Maximum - range.Minimum == 1 ? range.Minimum + range.Maximum - value
            : random.Next(2) == 0 ? Math.Clamp(value + random.NextInt64(-step, step + 1), range.Minimum, range.Maximum)
            : random.NextInt64(range.Minimum, range.Maximum + 1);
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
