namespace Sequencer.Proof.Satisfiability;

internal sealed partial class Solver
{
    private const int RestartUnit = 100;

    /// <summary>
    /// Whether the clauses are satisfiable together with the assumptions. Then the model can be read;
    /// else <see cref="Core"/> names assumptions that cannot hold together.
    /// </summary>
    /// <exception cref="BudgetSpentException">The budget is spent.</exception>
    /// <exception cref="OperationCanceledException">The caller gave up.</exception>
    public bool Solve(params ReadOnlySpan<Literal> assumptions)
    {
        Budget.CountQuery();
        _core.Clear();
        BackTo(Shared(assumptions));
        _assumed.Clear();
        bool? satisfiable = _contradictory ? false : null;
        try
        {
            for (int round = 1; satisfiable is null; round++)
            {
                ReduceWhenDue();
                satisfiable = Search(assumptions, RestartUnit * Luby(round));
            }

            BackTo(assumptions.Length);
            _assumed.AddRange(assumptions[..Level]);
        }
        finally
        {
            BackTo(_assumed.Count);
        }

        return satisfiable.Value;
    }

    /// <summary>How many assumptions, from the first on, are those whose consequences are still there.</summary>
    private int Shared(ReadOnlySpan<Literal> assumptions)
    {
        int most = Math.Min(Math.Min(Level, _assumed.Count), assumptions.Length);
        int shared = 0;
        while (shared < most && _assumed[shared] == assumptions[shared])
        {
            shared++;
        }

        return shared;
    }

    private bool? Search(ReadOnlySpan<Literal> assumptions, int conflicts)
    {
        while (true)
        {
            int conflict = Propagate();
            if (conflict != NoReason)
            {
                if (Level == 0)
                {
                    _contradictory = true;
                    return false;
                }

                Recover(conflict);
                conflicts--;
            }
            else if (conflicts < 0)
            {
                BackTo(assumptions.Length);
                return null;
            }
            else if (!TryDecide(assumptions, out bool? outcome))
            {
                return outcome;
            }
        }
    }

    private void Recover(int conflict)
    {
        Budget.CountConflict();
        BackTo(Analyse(conflict));
        Learn();
        _order.DecayAll();
    }

    /// <summary>The next decision, assumptions first; none left or one refuted ends the search.</summary>
    private bool TryDecide(ReadOnlySpan<Literal> assumptions, out bool? outcome)
    {
        outcome = null;
        while (Level < assumptions.Length)
        {
            Literal assumption = assumptions[Level];
            int value = _values[assumption.Code];
            if (value < 0)
            {
                ExplainFalse(assumption);
                outcome = false;
                return false;
            }

            _levelStarts.Add(_trailEnd);
            if (value == 0)
            {
                Assign(assumption, NoReason);
                return true;
            }
        }

        while (_order.TryRemoveTop(out int variable))
        {
            if (_values[2 * variable] == 0)
            {
                Budget.CountDecision();
                _levelStarts.Add(_trailEnd);
                Assign(Literal.Of(variable, !_phases[variable]), NoReason);
                return true;
            }
        }

        KeepModel();
        outcome = true;
        return false;
    }

    private void KeepModel()
    {
        if (_model.Length < VariableCount)
        {
            _model = new bool[Math.Max(VariableCount, 2 * _model.Length)];
        }

        for (int variable = 0; variable < VariableCount; variable++)
        {
            _model[variable] = _values[2 * variable] > 0;
        }
    }

    /// <summary>The sequence 1 1 2 1 1 2 4 ... (Luby, Sinclair and Zuckerman 1993), from one.</summary>
    private static int Luby(int round)
    {
        int size = 1;
        while (size < round)
        {
            size = 2 * size + 1;
        }

        while (size != round)
        {
            size = (size - 1) / 2;
            if (round > size)
            {
                round -= size;
            }
        }

        return (size + 1) / 2;
    }
}
