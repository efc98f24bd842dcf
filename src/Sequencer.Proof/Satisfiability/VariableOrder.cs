namespace Sequencer.Proof.Satisfiability;

/// <summary>
/// A heap of variables by activity, the most active on top; ties go to the lower number. A gate's output
/// follows from its inputs, so it is no choice until a conflict has shown that it matters.
/// </summary>
internal sealed class VariableOrder
{
    private const double Largest = 1e100;
    private const double Decay = 1 / 0.95;

    private int[] _heap = new int[32];
    private int[] _place = new int[32];
    private bool[] _isChoice = new bool[32];
    private double[] _activity = new double[32];
    private int _variables;
    private int _heapEnd;
    private double _increment = 1;

    public void AddVariable(bool isChoice)
    {
        if (_variables == _heap.Length)
        {
            Array.Resize(ref _heap, 2 * _variables);
            Array.Resize(ref _place, 2 * _variables);
            Array.Resize(ref _isChoice, 2 * _variables);
            Array.Resize(ref _activity, 2 * _variables);
        }

        _place[_variables] = -1;
        _isChoice[_variables] = isChoice;
        Insert(_variables++);
    }

    public void Insert(int variable)
    {
        if (_place[variable] < 0 && _isChoice[variable])
        {
            _place[variable] = _heapEnd;
            _heap[_heapEnd++] = variable;
            Rise(_heapEnd - 1);
        }
    }

    public bool TryRemoveTop(out int variable)
    {
        if (_heapEnd == 0)
        {
            variable = -1;
            return false;
        }

        variable = _heap[0];
        _place[variable] = -1;
        int last = _heap[--_heapEnd];
        if (_heapEnd > 0)
        {
            _heap[0] = last;
            _place[last] = 0;
            Sink(0);
        }

        return true;
    }

    public void Bump(int variable)
    {
        _isChoice[variable] = true;
        Raise(variable, _increment);
    }

    /// <summary>
    /// Puts a variable before those that mattered to earlier questions: by decay none can have more than so many increments from conflicts. It
    /// becomes no choice by that.
    /// </summary>
    /// <param name="variable">The variable.</param>
    /// <param name="conflicts">So many conflicts more, to tell those apart that are preferred together.</param>
    public void Prefer(int variable, double conflicts) => Raise(variable, ((Decay / (Decay - 1)) + conflicts) * _increment);

    public void DecayAll() => _increment *= Decay;

    private void Raise(int variable, double activity)
    {
        _activity[variable] += activity;
        if (_activity[variable] > Largest)
        {
            Rescale();
        }

        if (_place[variable] >= 0)
        {
            Rise(_place[variable]);
        }
    }

    private void Rescale()
    {
        for (int index = 0; index < _variables; index++)
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
        while (2 * place + 1 < _heapEnd)
        {
            int child = 2 * place + 1;
            if (child + 1 < _heapEnd && Before(_heap[child + 1], _heap[child]))
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
