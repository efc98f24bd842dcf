using Sequencer.Plant.Hydraulics;

namespace Sequencer.Plant.Reaction;

/// <summary>
/// What each number of a plant's state can be where no tank's volume has to be known: beyond it the model has left what is physical. The bands allow for what the errors of steps may add up to.
/// </summary>
internal sealed class StateBounds
{
    /// <summary>g, mol, or L on filters and floors: the error allowed in one step is 1e-3 (<see cref="PlantParts.AbsoluteTolerance"/>).</summary>
    private const double OnFilter = 1.0;

    /// <summary>g or L of what has left a filter.</summary>
    private const double Gone = 10.0;

    /// <summary>Pa, of a vacuum.</summary>
    private const double Pascals = 100.0;

    /// <summary>L or g, of what settles: the error allowed in one step is 1e-3.</summary>
    private const double Settling = 1.0;

    /// <summary>m; no floc is larger.</summary>
    private const double LargestFloc = 0.1;

    /// <summary>mol, of a dosing line.</summary>
    private const double InDosingLine = 1e-3;

    /// <summary>C, beyond which there is no liquid water, and no equation for its vapour's pressure.</summary>
    private const double Critical = 374.0;

    private readonly double[] _low;
    private readonly double[] _high;

    public StateBounds(PlantParts parts)
    {
        StateLayout layout = parts.Layout;
        _low = new double[layout.Count];
        _high = new double[layout.Count];
        Array.Fill(_low, double.NegativeInfinity);
        Array.Fill(_high, double.PositiveInfinity);
        for (int line = 0; line < parts.DosingLines.Length; line++)
        {
            _low.AsSpan(layout.DosingLine(line), layout.Contents).Fill(-InDosingLine);
        }

        for (int drum = 0; drum < parts.Drums.Length; drum++)
        {
            _low[layout.Vacuum(drum)] = -Pascals;
            _high[layout.Vacuum(drum)] = parts.Drums[drum].Description.DeepestPascals + Pascals;
            _low.AsSpan(layout.Skimmed(drum), 3).Fill(-Gone);
            _low[layout.Pores(drum)] = -OnFilter;
            _low.AsSpan(layout.Held(drum), layout.Contents).Fill(-OnFilter);
        }

        for (int settler = 0; settler < parts.Settlers.Length; settler++)
        {
            TankBody tank = parts.Tanks[parts.Settlers[settler].Tank];
            _low[layout.Clear(settler)] = -Settling;
            _high[layout.Clear(settler)] = tank.Description.OverflowLitres + Settling;
            _low[layout.Flocs(settler)] = -Settling;
            _low[layout.FlocSize(settler)] = -LargestFloc;
            _high[layout.FlocSize(settler)] = LargestFloc;
            _low.AsSpan(layout.Bed(settler), layout.Contents).Fill(-OnFilter);
        }

        for (int press = 0; press < parts.Presses.Length; press++)
        {
            _low[layout.PressWater(press)] = -OnFilter;
            _low.AsSpan(layout.PressDropped(press), 2).Fill(-Gone);
            _low.AsSpan(layout.PressHeld(press), layout.Contents).Fill(-OnFilter);
        }

        for (int water = 0; water < parts.SealWaters.Length; water++)
        {
            _low[layout.SealWater(water)] = 0.0;
            _high[layout.SealWater(water)] = Critical;
        }
    }

    /// <summary>The first number that cannot be, or is none at all; -1 where all can.</summary>
    public int FirstBeyond(ReadOnlySpan<double> state)
    {
        for (int index = 0; index < _low.Length; index++)
        {
            if (!(state[index] >= _low[index] && state[index] <= _high[index]))
            {
                return index;
            }
        }

        return -1;
    }

    /// <summary>What it is and what it should not be beyond, in words.</summary>
    public string Explain(int index, double value, string quantity, string unit) => FormattableString.Invariant(
        $"{quantity} is {value:G6} {unit}, and no {(value > _high[index] ? FormattableString.Invariant($"more than {_high[index]:G6}") : FormattableString.Invariant($"less than {_low[index]:G6}"))} {unit} can be");
}
