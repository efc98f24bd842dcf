namespace Sequencer.Proof.Satisfiability;

/// <summary>A heap of variables by activity, the most active on top; ties go to the lower number.</summary>
internal sealed class VariableOrder
{
    private const double Largest = 1e100;
    private const double Decay = 1 / 0.95;

    private readonly List<int> _heap = [];
    private readonly List<int> _place = [];
    private readonly List<double> _activity = [];
    private double _increment = 1;

    public void AddVariable()
    {
        _activity.Add(0);
        _place.Add(-1);
        Insert(_activity.Count - 1);
    }

    public void Insert(int variable)
    {
        if (_place[variable] < 0)
        {
            _place[variable] = _heap.Count;
            _heap.Add(variable);
            Rise(_heap.Count - 1);
        }
    }

    public bool TryRemoveTop(out int variable)
    {
        if (_heap.Count == 0)
        {
            variable = -1;
            return false;
        }

        variable = _heap[0];
        _place[variable] = -1;
        int last = _heap[^1];
        _heap.RemoveAt(_heap.Count - 1);
        if (_heap.Count > 0)
        {
            _heap[0] = last;
            _place[last] = 0;
            Sink(0);
        }

        return true;
    }

    public void Bump(int variable)
    {
        _activity[variable] += _increment;
        if (_activity[variable] > Largest)
        {
            Rescale();
        }

        if (_place[variable] >= 0)
        {
            Rise(_place[variable]);
        }
    }

    public void DecayAll() => _increment *= Decay;

    private void Rescale()
    {
        for (int index = 0; index < _activity.Count; index++)
        {
            _activity[index] /= Largest;
        }

        _increment /= Largest;
    }

    private bool Before(int left, int right) =>
        _activity[left] > _activity[right] || (_activity[left] == _activity[right] && left < right);

    private void Rise(int place)
    {
        int variable = _heap[place];
        while (place > 0 && Before(variable, _heap[(place - 1) / 2]))
        {
            Put(_heap[(place - 1) / 2], place);
            place = (place - 1) / 2;
        }

        Put(variable, place);
    }

    private void Sink(int place)
    {
        int variable = _heap[place];
        while (2 * place + 1 < _heap.Count)
        {
            int child = 2 * place + 1;
            if (child + 1 < _heap.Count && Before(_heap[child + 1], _heap[child]))
            {
                child++;
            }

            if (!Before(_heap[child], variable))
            {
                break;
            }

            Put(_heap[child], place);
            place = child;
        }

        Put(variable, place);
    }

    private void Put(int variable, int place)
    {
        _heap[place] = variable;
        _place[variable] = place;
    }
}
