namespace Sequencer.Proof.Satisfiability;

internal sealed partial class Solver
{
    private const int Dead = -1;
    private const int FirstReduction = 4000;
    private const int ReductionGrowth = 1000;
    private const int AlwaysKept = 3;

    private int _reduceAt = FirstReduction;
    private int _trailAtCleaning;

    /// <summary>
    /// Forgets the worse half of the learnt clauses when there are many, and clauses
    /// that have become true for good when there may be many (a retired activation literal makes some).
    /// </summary>
    private void ReduceWhenDue()
    {
        int lasting = Level == 0 ? _trailEnd : _levelStarts[0];
        bool full = _learnt.Count >= _reduceAt;
        bool stale = lasting + _retired.Count - _trailAtCleaning > 200 + VariableCount / 20;
        if (!full && !stale)
        {
            return;
        }

        BackTo(0);
        foreach (Literal guard in _retired)
        {
            AddClause(!guard);
        }

        _retired.Clear();

        if (full)
        {
            ForgetWorseHalf();
            _reduceAt += ReductionGrowth;
        }

        Bury(_learnt);
        Bury(_given);
        _trailAtCleaning = _trailEnd;
        Compact();
    }

    private void ForgetWorseHalf()
    {
        int[] byWorth = [.. _learnt.OrderBy(clause => _clauses[clause + 1]).ThenByDescending(clause => clause)];
        foreach (int clause in byWorth.AsSpan(byWorth.Length / 2))
        {
            if (_clauses[clause + 1] > AlwaysKept)
            {
                _clauses[clause + 1] = Dead;
            }
        }
    }

    private void Bury(List<int> clauses)
    {
        foreach (int clause in clauses)
        {
            foreach (int code in LiteralsOf(clause))
            {
                if (_values[code] > 0 && _levels[code >> 1] == 0)
                {
                    _clauses[clause + 1] = Dead;
                    break;
                }
            }
        }

        clauses.RemoveAll(clause => _clauses[clause + 1] == Dead);
    }

    /// <summary>Moves the living clauses together and watches them anew. Top-level assignments need no reasons.</summary>
    private void Compact()
    {
        foreach (Literal literal in _trail.AsSpan(0, _trailEnd))
        {
            _reasons[literal.Variable] = NoReason;
        }

        for (int code = 0; code < 2 * VariableCount; code++)
        {
            _watches[code].Count = 0;
        }

        int[] before = _clauses;
        _clauses = new int[Math.Max(1024, _clausesEnd)];
        _clausesEnd = 0;
        Move(_given, before);
        Move(_learnt, before);
        _propagated = 0;
        _contradictory |= Propagate() != NoReason;
    }

    private void Move(List<int> clauses, int[] before)
    {
        for (int index = 0; index < clauses.Count; index++)
        {
            int from = clauses[index];
            int length = before[from] + ClauseHeader;
            int to = _clausesEnd;
            Array.Copy(before, from, _clauses, to, length);
            _clausesEnd += length;
            clauses[index] = to;
            Literal first = new(_clauses[to + ClauseHeader]);
            Literal second = new(_clauses[to + ClauseHeader + 1]);
            _watches[first.Code].Add(to, second);
            _watches[second.Code].Add(to, first);
        }
    }
}
