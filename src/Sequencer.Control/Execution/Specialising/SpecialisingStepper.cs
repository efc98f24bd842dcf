using System.Collections.Immutable;
using System.Numerics;
using System.Runtime.InteropServices;
using Sequencer.Control.TransitionSystems;

namespace Sequencer.Control.Execution.Specialising;

/// <summary>
/// Runs a system by its instructions and, where scan after scan is alike but for clocks and readings, by what is left of them then.
/// Its results are those of the <see cref="Interpreter"/> for any inputs and states; only its time differs. Ready at once, so the
/// choice for a run with a plant, whether long or short.
/// </summary>
public sealed class SpecialisingStepper : Stepper
{
    /// <summary>Situations and specialised scans kept; past these all are forgotten, so that memory stays bounded.</summary>
    private const int MostKept = 1024;

    /// <summary>Whole scans in a situation after which one is specialised: that takes as long as some twenty of them.</summary>
    private const int WorthSpecialising = 5;

    /// <summary>Within so many scans it is counted how often leaves change and outcomes are missed: 7 h of 100 ms.</summary>
    private const int ScansOfStretch = 1 << 18;

    /// <summary>
    /// After so many all is learnt anew, for about a hundredth of the time: what moved in one of them may rest in the others, and would
    /// be computed for ever.
    /// </summary>
    private const int StretchesRemembered = 8;

    private readonly InstructionList _code;
    private readonly long[] _registers;
    private readonly Specialiser _specialiser;
    private readonly LeafHabits _habits;
    private readonly OutcomeHabits _outcomes;
    private readonly Dictionary<int, ScanSituation> _situations = [];
    private int _kept;
    private int _scansOfStretch;
    private int _stretches;

    /// <summary>Of the next scan, as far as the states go; null where it has to be looked for.</summary>
    private ScanSituation? _situation;
    private SpecialisedScan? _lastScan;
    private bool _keptStill;

    /// <summary>Observed values that a specialised scan computes; in all others they are known, and the same whenever that scan is done again.</summary>
    private readonly bool[] _observedMoves;
    private long _observedVersion;

    public SpecialisingStepper(TransitionSystem system, ImmutableArray<Expression> observed)
        : base(system, observed)
    {
        _code = new InstructionList(system, observed);
        _registers = [.. _code.InitialRegisters];
        _specialiser = new Specialiser(_code, Inputs.Length);
        _habits = new LeafHabits(system);
        _specialiser.Expect(_habits.Moves);
        _observedMoves = new bool[Observed.Length];
        _outcomes = new OutcomeHabits(_code.Instructions.Length);
    }

    /// <summary>How many scans could not be shortened.</summary>
    public long WholeScans { get; private set; }

    /// <summary>How many instructions the others took together.</summary>
    public long ShortenedInstructions { get; private set; }

    public override bool KeptStill => _keptStill;

    public override long StillVersion => _habits.Version + _observedVersion;

    public override bool IsStillInput(int place) => !_habits.Moves[place];

    public override bool IsStillState(int place) => !_habits.Moves[Inputs.Length + place];

    public override bool IsStillObserved(int place) => !_observedMoves[place];

    public override void Step()
    {
        _keptStill = false;
        if (++_scansOfStretch == ScansOfStretch)
        {
            BeginStretch();
        }

        bool isThere = _situation is not null && InputsFit(_situation);
        if (!isThere)
        {
            _situation = Find();
        }

        if (_situation is not { } situation)
        {
            StepWhole();
            return;
        }

        Miss? missed = null;
        for (int index = 0; index < situation.Count; index++)
        {
            SpecialisedScan scan = situation[index];
            bool again = ReferenceEquals(scan, _lastScan);
            if (scan.Step(this, StateValues, again) is not { } miss)
            {
                ShortenedInstructions += scan.Instructions;
                situation.Prefer(index);
                _lastScan = scan;
                bool stays = scan.Keeps(StateValues, situation.Leaves.AsSpan(Inputs.Length));
                _situation = stays ? situation : null;
                _keptStill = isThere && stays && again;
                return;
            }

            missed ??= miss;
        }

        if (missed is { } first && Learn(first))
        {
            situation.Clear();
        }

        StepWhole();
    }

    protected override void StatesWereSet()
    {
        _situation = null;
        _lastScan = null;
    }

    /// <summary>True where something that was counted on is not any more.</summary>
    private bool Learn(Miss miss) => miss.IsState ? _habits.Missed(Inputs.Length + miss.Place) : _outcomes.Missed(miss.Place);

    private void BeginStretch()
    {
        _scansOfStretch = 0;
        _habits.BeginStretch();
        _outcomes.BeginStretch();
        if (++_stretches == StretchesRemembered)
        {
            _stretches = 0;
            _habits.Forget();
            _outcomes.Forget();
            _specialiser.Expect(_habits.Moves);
            Forget();
        }
    }

    private void StepWhole()
    {
        WholeScans++;
        Inputs.CopyTo(_registers, 0);
        StateValues.CopyTo(_registers, Inputs.Length);
        if (_habits.Learn(_registers.AsSpan(0, Inputs.Length + StateValues.Length)))
        {
            _specialiser.Expect(_habits.Moves);
            Forget();
        }

        ScanSituation situation = _situation ?? Remember();
        _code.Execute(_registers, Outputs, Observed, StateValues);
        if (++situation.WholeScans == WorthSpecialising)
        {
            _kept++;
            SpecialisedScan scan = _specialiser.Specialise(_registers, _habits, _outcomes.Varies);
            situation.Add(scan);
            foreach (int place in scan.ComputedObserved.Where(place => !_observedMoves[place]))
            {
                _observedMoves[place] = true;
                _observedVersion++;
            }
        }

        StatesWereSet();
    }

    /// <summary>Keeps the situation of this scan, which was not met before.</summary>
    private ScanSituation Remember()
    {
        if (_kept >= MostKept)
        {
            Forget();
        }

        _kept++;
        ScanSituation situation = new([.. Inputs, .. StateValues]);
        _situations[Digest()] = situation;
        return situation;
    }

    private void Forget()
    {
        _situations.Clear();
        _kept = 0;
        StatesWereSet();
    }

    private ScanSituation? Find() =>
        _situations.TryGetValue(Digest(), out ScanSituation? found) && InputsFit(found) && StatesFit(found) ? found : null;

    private bool InputsFit(ScanSituation situation) =>
        Same(Inputs, situation.Leaves.AsSpan(0, Inputs.Length), _habits.StillMask.AsSpan(0, Inputs.Length));

    private bool StatesFit(ScanSituation situation) =>
        Same(StateValues, situation.Leaves.AsSpan(Inputs.Length), _habits.StillMask.AsSpan(Inputs.Length));

    /// <summary>Of the leaves that do not move.</summary>
    private int Digest()
    {
        ulong digest = 0;
        Add(ref digest, Inputs, _habits.StillMask.AsSpan(0, Inputs.Length));
        Add(ref digest, StateValues, _habits.StillMask.AsSpan(Inputs.Length));
        return (int)(digest >> 32);
    }

    private static void Add(ref ulong digest, ReadOnlySpan<long> values, ReadOnlySpan<long> mask)
    {
        for (int index = 0; index < values.Length; index++)
        {
            digest = (BitOperations.RotateLeft(digest, 5) ^ (ulong)(values[index] & mask[index])) * 0x9E3779B97F4A7C15UL;
        }
    }

    /// <summary>All three of one length.</summary>
    private static bool Same(ReadOnlySpan<long> left, ReadOnlySpan<long> right, ReadOnlySpan<long> mask)
    {
        ref long first = ref MemoryMarshal.GetReference(left);
        ref long second = ref MemoryMarshal.GetReference(right[..left.Length]);
        ref long masked = ref MemoryMarshal.GetReference(mask[..left.Length]);
        Vector<long> differing = Vector<long>.Zero;
        int index = 0;
        for (; index <= left.Length - Vector<long>.Count; index += Vector<long>.Count)
        {
            nuint place = (nuint)index;
            differing |= (Vector.LoadUnsafe(ref first, place) ^ Vector.LoadUnsafe(ref second, place)) & Vector.LoadUnsafe(ref masked, place);
        }

        long rest = 0;
        for (; index < left.Length; index++)
        {
            rest |= (left[index] ^ right[index]) & mask[index];
        }

        return rest == 0 && differing == Vector<long>.Zero;
    }
}
