using System.Runtime.InteropServices;

namespace Sequencer.Proof.Satisfiability;

internal sealed partial class Solver
{
    private readonly List<Literal> _lesson = [];
    private readonly List<int> _marked = [];
    private readonly HashSet<int> _distinctLevels = [];

    /// <summary>
    /// Resolves the conflict back to the first unique implication point; leaves the learnt clause in
    /// the lesson (asserting literal first, a literal of the level to return to second).
    /// </summary>
    private int Analyse(int conflict)
    {
        _lesson.Clear();
        _lesson.Add(default);
        int open = 0;
        int index = _trailEnd;
        int reason = conflict;
        Literal pivot;
        do
        {
            foreach (int code in LiteralsOf(reason))
            {
                open += Mark(new Literal(code));
            }

            do
            {
                pivot = _trail[--index];
            }
            while (!_seen[pivot.Variable]);

            _seen[pivot.Variable] = false;
            reason = _reasons[pivot.Variable];
            open--;
        }
        while (open > 0);

        _lesson[0] = !pivot;
        DropImplied();
        foreach (int variable in _marked)
        {
            _seen[variable] = false;
        }

        _marked.Clear();
        return LevelToReturnTo();
    }

    /// <summary>Notes a literal of a clause in the resolution; one if it is of the current level.</summary>
    private int Mark(Literal literal)
    {
        int variable = literal.Variable;
        if (_values[literal.Code] > 0 || _seen[variable] || _levels[variable] == 0)
        {
            return 0;
        }

        _order.Bump(variable);
        _seen[variable] = true;
        _marked.Add(variable);
        if (_levels[variable] == Level)
        {
            return 1;
        }

        _lesson.Add(literal);
        return 0;
    }

    /// <summary>Drops literals that the others imply in one step of resolution.</summary>
    private void DropImplied()
    {
        int kept = 1;
        for (int index = 1; index < _lesson.Count; index++)
        {
            int reason = _reasons[_lesson[index].Variable];
            if (reason == NoReason || !AllSeen(LiteralsOf(reason), _lesson[index].Variable))
            {
                _lesson[kept++] = _lesson[index];
            }
        }

        _lesson.RemoveRange(kept, _lesson.Count - kept);
    }

    private bool AllSeen(ReadOnlySpan<int> codes, int except)
    {
        foreach (int code in codes)
        {
            int variable = code >> 1;
            if (variable != except && !_seen[variable] && _levels[variable] > 0)
            {
                return false;
            }
        }

        return true;
    }

    private int LevelToReturnTo()
    {
        if (_lesson.Count == 1)
        {
            return 0;
        }

        int highest = 1;
        for (int index = 2; index < _lesson.Count; index++)
        {
            if (_levels[_lesson[index].Variable] > _levels[_lesson[highest].Variable])
            {
                highest = index;
            }
        }

        (_lesson[1], _lesson[highest]) = (_lesson[highest], _lesson[1]);
        return _levels[_lesson[1].Variable];
    }

    /// <summary>Adds the lesson and draws its consequence.</summary>
    private void Learn()
    {
        if (_lesson.Count == 1)
        {
            Assign(_lesson[0], NoReason);
            return;
        }

        _distinctLevels.Clear();
        foreach (Literal literal in _lesson)
        {
            _distinctLevels.Add(_levels[literal.Variable]);
        }

        int clause = Store(CollectionsMarshal.AsSpan(_lesson), _distinctLevels.Count);
        _learnt.Add(clause);
        Assign(_lesson[0], clause);
    }

    /// <summary>The assumptions among the causes of an assumption's being false.</summary>
    private void ExplainFalse(Literal assumption)
    {
        _core.Clear();
        _core.Add(assumption);
        if (_levels[assumption.Variable] == 0)
        {
            return;
        }

        _seen[assumption.Variable] = true;
        for (int index = _trailEnd - 1; index >= _levelStarts[0]; index--)
        {
            int variable = _trail[index].Variable;
            if (!_seen[variable])
            {
                continue;
            }

            _seen[variable] = false;
            if (_reasons[variable] == NoReason)
            {
                AddToCore(_trail[index], assumption);
                continue;
            }

            foreach (int code in LiteralsOf(_reasons[variable]))
            {
                _seen[code >> 1] = _levels[code >> 1] > 0 && (code >> 1 != variable);
            }
        }
    }

    private void AddToCore(Literal decision, Literal assumption)
    {
        if (decision != assumption)
        {
            _core.Add(decision);
        }
    }
}
