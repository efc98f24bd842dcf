using Sequencer.Control.TransitionSystems;

namespace Sequencer.Control.Execution.Specialising;

/// <summary>
/// Which values a specialised scan has to compute or check: the moving ones among its results, what they are made of, and the
/// comparisons that known results rest on. A conjunction that is false needs one false member only.
/// </summary>
internal sealed class NeededValues(InstructionList code, ValueClasses classes)
{
    private readonly bool[] _needed = new bool[code.InitialRegisters.Length];

    public bool this[int register] => _needed[register];

    public void Clear() => Array.Clear(_needed);

    public void Need(int register)
    {
        if (classes.Moves(register) || classes.Checks(register) > 0)
        {
            _needed[register] = true;
        }
    }

    /// <summary>From what is needed down to the leaves.</summary>
    public void Follow(long[] values)
    {
        ReadOnlySpan<int> depending = classes.Depending;
        for (int place = depending.Length - 1; place >= 0; place--)
        {
            ref readonly Instruction one = ref code.Instructions[depending[place]];
            if (_needed[one.Target])
            {
                NeedOperands(one, values);
            }
        }
    }

    private void NeedOperands(in Instruction one, long[] values)
    {
        switch (one.Kind)
        {
            case ExpressionKind.Not:
            case ExpressionKind.Scale:
                Need(one.First);
                break;
            case ExpressionKind.And when classes.Decides(one.Target, values, 0):
                NeedOne(one, values, 0);
                break;
            case ExpressionKind.Or when classes.Decides(one.Target, values, 1):
                NeedOne(one, values, 1);
                break;
            case ExpressionKind.IfThenElse when !classes.Moves(one.First):
                Need(one.First);
                Need(values[one.First] != 0 ? one.Second : one.Third);
                break;
            case ExpressionKind.IfThenElse:
                if (classes.Moves(one.Target))
                {
                    Need(one.First);
                }

                Need(one.Second);
                Need(one.Third);
                break;
            default:
                Need(one.First);
                Need(one.Second);
                break;
        }
    }

    /// <summary>One member that decides is enough: one that is needed anyway, else the one that rests on fewer checks.</summary>
    private void NeedOne(in Instruction one, long[] values, long decisive)
    {
        bool firstDecides = classes.Decides(one.First, values, decisive);
        bool secondDecides = classes.Decides(one.Second, values, decisive);
        if (!firstDecides || !secondDecides)
        {
            Need(firstDecides ? one.First : one.Second);
        }
        else if (!_needed[one.First] && !_needed[one.Second])
        {
            Need(classes.Checks(one.First) <= classes.Checks(one.Second) ? one.First : one.Second);
        }
    }
}
