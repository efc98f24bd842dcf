using Sequencer.Simulation.Loop;

namespace Sequencer.Simulation.Records;

/// <summary>Follows a unit's state and active steps from scan to scan.</summary>
internal sealed class UnitTracker(UnitPlaces unit)
{
    private readonly long[] _enteredAt = NotEntered(unit.Steps.Length);
    private readonly List<string> _labels = [];
    private long _state = -1;
    private long _stateSince;

    public UnitPlaces Unit => unit;

    public List<StepVisit> Steps { get; } = [];

    public List<StateVisit> States { get; } = [];

    public IReadOnlyList<string> Labels => _labels;

    public long State => _state;

    /// <summary>The place of the active steps' words among <see cref="Labels"/>.</summary>
    public int Label { get; private set; } = -1;

    /// <summary>What has to be looked at in each scan: where none of them has changed, nothing has to be observed.</summary>
    public IEnumerable<ValueSource> Watched => unit.Steps.Select(step => step.Place).Append(unit.StatePlace)
        .Select(place => new ValueSource(unit.Name, ValueOrigin.State, place, 1, "", 0));

    /// <summary>True where something changed in this scan.</summary>
    public bool Observe(ClosedLoop loop)
    {
        bool changed = ObserveState(loop);
        bool stepsChanged = Label < 0;
        for (int index = 0; index < unit.Steps.Length; index++)
        {
            bool active = loop.State(unit.Steps[index].Place) != 0;
            if (active == _enteredAt[index] >= 0)
            {
                continue;
            }

            stepsChanged = true;
            if (!active)
            {
                Steps.Add(new StepVisit(unit.Name, unit.Steps[index].Step, _enteredAt[index], loop.ScanNumber));
            }

            _enteredAt[index] = active ? loop.ScanNumber : -1;
        }

        if (stepsChanged)
        {
            Label = FindLabel();
        }

        return changed | stepsChanged;
    }

    /// <summary>Ends what is still open.</summary>
    public void Finish()
    {
        States.Add(new StateVisit(unit.Name, (UnitState)_state, _stateSince, null));
        for (int index = 0; index < unit.Steps.Length; index++)
        {
            if (_enteredAt[index] >= 0)
            {
                Steps.Add(new StepVisit(unit.Name, unit.Steps[index].Step, _enteredAt[index], null));
            }
        }
    }

    private static long[] NotEntered(int steps)
    {
        long[] enteredAt = new long[steps];
        Array.Fill(enteredAt, -1);
        return enteredAt;
    }

    private bool ObserveState(ClosedLoop loop)
    {
        long now = loop.State(unit.StatePlace);
        if (now == _state)
        {
            return false;
        }

        if (_state >= 0)
        {
            States.Add(new StateVisit(unit.Name, (UnitState)_state, _stateSince, loop.ScanNumber));
        }

        _state = now;
        _stateSince = loop.ScanNumber;
        return true;
    }

    private int FindLabel()
    {
        string label = string.Join('+', unit.Steps.Where((_, index) => _enteredAt[index] >= 0).Select(step => step.Step));
        int found = _labels.IndexOf(label);
        if (found < 0)
        {
            found = _labels.Count;
            _labels.Add(label);
        }

        return found;
    }
}
