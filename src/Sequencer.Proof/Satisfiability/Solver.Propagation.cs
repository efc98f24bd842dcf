namespace Sequencer.Proof.Satisfiability;

internal sealed partial class Solver
{
    /// <summary>Draws every unit consequence; the clause that became false, or <see cref="NoReason"/>.</summary>
    private int Propagate()
    {
        int start = _propagated;
        int conflict = NoReason;
        while (_propagated < _trailEnd && conflict == NoReason)
        {
            conflict = Visit(!_trail[_propagated++]);
        }

        Budget.CountPropagations(_propagated - start);
        return conflict;
    }

    /// <summary>Looks at each clause that watches a literal which has just become false.</summary>
    private int Visit(Literal falsified)
    {
        ref WatchList list = ref _watches[falsified.Code];
        WatchList.Watch[]? items = list.Items;
        int kept = 0;
        int conflict = NoReason;
        int index = 0;
        for (; index < list.Count && conflict == NoReason; index++)
        {
            WatchList.Watch watch = items![index];
            if (_values[watch.Blocker.Code] > 0)
            {
                items[kept++] = watch;
                continue;
            }

            Span<int> literals = LiteralsOf(watch.Clause);
            if (literals[0] == falsified.Code)
            {
                literals[0] = literals[1];
                literals[1] = falsified.Code;
            }

            Literal first = new(literals[0]);
            if (_values[first.Code] > 0)
            {
                items[kept++] = new WatchList.Watch(watch.Clause, first);
            }
            else if (!Rewatch(watch.Clause, literals, first))
            {
                items[kept++] = new WatchList.Watch(watch.Clause, first);
                if (_values[first.Code] < 0)
                {
                    conflict = watch.Clause;
                }
                else
                {
                    Assign(first, watch.Clause);
                }
            }
        }

        if (kept < index && index < list.Count)
        {
            Array.Copy(items!, index, items!, kept, list.Count - index);
        }

        list.Count -= index - kept;
        return conflict;
    }

    /// <summary>Moves the second watch to a literal that is not false, if there is one.</summary>
    private bool Rewatch(int clause, Span<int> literals, Literal first)
    {
        for (int index = 2; index < literals.Length; index++)
        {
            if (_values[literals[index]] >= 0)
            {
                (literals[1], literals[index]) = (literals[index], literals[1]);
                _watches[literals[1]].Add(clause, first);
                return true;
            }
        }

        return false;
    }
}
