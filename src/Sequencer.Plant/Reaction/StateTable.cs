using Sequencer.Plant.Description;
using Sequencer.Plant.Hydraulics;

namespace Sequencer.Plant.Reaction;

/// <summary>
/// What each number of a plant's state is, in the places of its <see cref="StateLayout"/>. Errors allowed in a step are far below what any instrument shows. Beyond its
/// bounds a number has left what is physical; they allow for what the errors of steps may add up to.
/// </summary>
internal sealed class StateTable
{
    private const double Litres = 1e-4;
    private const double LitresTimesDegrees = 1e-2;
    private const double MolOrGram = 1e-6;
    private const double Pascals = 1.0;
    private const double GramOnFilter = 1e-3;
    private const double LitresOnFilter = 1e-3;
    private const double SealCelsius = 1e-3;
    private const double ClearLitres = 1e-3;
    private const double GramsOfFlocs = 1e-3;
    private const double FlocMetres = 1e-9;

    /// <summary>g, mol, or L on filters and floors, and of what settles.</summary>
    private const double NoLess = -1.0;

    /// <summary>g or L of what has left a filter.</summary>
    private const double NoLessGone = -10.0;

    /// <summary>mol, of a dosing line.</summary>
    private const double NoLessInLine = -1e-3;

    /// <summary>Pa, of a vacuum.</summary>
    private const double BesideVacuum = 100.0;

    /// <summary>L, of what is clear.</summary>
    private const double BesideTank = 1.0;

    /// <summary>m; no floc is larger.</summary>
    private const double LargestFloc = 0.1;

    /// <summary>C, beyond which there is no liquid water, and no equation for its vapour's pressure.</summary>
    private const double Critical = 374.0;

    private readonly PlantParts _parts;
    private readonly StateLayout _layout;
    private readonly StateNumber[] _numbers;
    private readonly double[] _low;
    private readonly double[] _high;

    public StateTable(PlantParts parts)
    {
        (_parts, _layout) = (parts, parts.Layout);
        _numbers = new StateNumber[_layout.Count];
        Array.Fill(_numbers, new StateNumber("balances of the plant", parts.Model.Name, "an amount", ""));
        foreach (TankBody tank in parts.Tanks)
        {
            AddTank(tank);
        }

        for (int line = 0; line < parts.DosingLines.Length; line++)
        {
            string name = parts.DosingLines[line].Description.Name;
            AddContents(_layout.DosingLine(line), "contents of the dosing line", name, "in the line", MolOrGram, NoLessInLine);
        }

        for (int drum = 0; drum < parts.Drums.Length; drum++)
        {
            AddDrum(drum);
        }

        for (int settler = 0; settler < parts.Settlers.Length; settler++)
        {
            AddSettler(settler);
        }

        for (int press = 0; press < parts.Presses.Length; press++)
        {
            AddPress(press);
        }

        for (int water = 0; water < parts.SealWaters.Length; water++)
        {
            _numbers[_layout.SealWater(water)] = new("heat of the seal water", parts.SealWaters[water].Description.Name, "temperature", "C", SealCelsius) { Low = 0.0, High = Critical };
        }

        _low = [.. _numbers.Select(number => number.Low)];
        _high = [.. _numbers.Select(number => number.High)];
    }

    public StateNumber this[int place] => _numbers[place];

    public double[] AllowedErrors() => [.. _numbers.Select(number => number.AllowedError)];

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

    private void AddTank(TankBody tank)
    {
        string name = tank.Description.Name;
        _numbers[_layout.Volume(tank.Index)] = new("balance of volume", name, "volume", "L", Litres);
        _numbers[_layout.Heat(tank.Index)] = new("balance of heat", name, "heat", "L C", LitresTimesDegrees);
        _numbers[_layout.Overflowed(tank.Index)] = new("balance of volume", name, "what has run over", "L");
        foreach ((int first, string where) in (ReadOnlySpan<(int, string)>)[(_layout.Mixed(tank.Index), "mixed in"), (_layout.OnTheWay(tank.Index), "on its way"), (_layout.Mixing(tank.Index), "being mixed in")])
        {
            for (int content = 0; content < _layout.Contents; content++)
            {
                _numbers[first + content] = Content($"balance of {_parts.Contents.Names[content]}", name, content, where, MolOrGram);
            }
        }
    }

    private void AddDrum(int drum)
    {
        const string Equation = "coat, cake and filtrate";
        DrumDescription described = _parts.Drums[drum].Description;
        string name = described.Name;
        int skimmed = _layout.Skimmed(drum);
        _numbers[_layout.Vacuum(drum)] = new("vacuum", name, "vacuum", "Pa", Pascals) { Low = -BesideVacuum, High = described.DeepestPascals + BesideVacuum };
        _numbers[_layout.Filtered(drum)] = new(Equation, name, "filtrate", "L");
        _numbers[skimmed] = new(Equation, name, "filter aid taken off", "g", GramOnFilter) { Low = NoLessGone };
        _numbers[skimmed + 1] = new(Equation, name, "other solids taken off", "g", GramOnFilter) { Low = NoLessGone };
        _numbers[skimmed + 2] = new(Equation, name, "water taken off", "L", LitresOnFilter) { Low = NoLessGone };
        _numbers[_layout.Pores(drum)] = new(Equation, name, "water in coat and cake", "L", LitresOnFilter) { Low = NoLess };
        AddContents(_layout.Held(drum), Equation, name, "on the drum", GramOnFilter, NoLess);
    }

    private void AddSettler(int settler)
    {
        const string Equation = "settling";
        TankDescription tank = _parts.Tanks[_parts.Settlers[settler].Tank].Description;
        _numbers[_layout.Clear(settler)] = new(Equation, tank.Name, "clear water", "L", ClearLitres) { Low = NoLess, High = tank.OverflowLitres + BesideTank };
        _numbers[_layout.Flocs(settler)] = new(Equation, tank.Name, "what is in flocs", "g", GramsOfFlocs) { Low = NoLess };
        _numbers[_layout.FlocSize(settler)] = new(Equation, tank.Name, "size of flocs", "m", FlocMetres) { Low = -LargestFloc, High = LargestFloc };
        AddContents(_layout.Bed(settler), Equation, tank.Name, "on the floor", GramOnFilter, NoLess);
    }

    private void AddPress(int press)
    {
        const string Equation = "cakes and filtrate";
        string name = _parts.Presses[press].Description.Name;
        int dropped = _layout.PressDropped(press);
        _numbers[_layout.PressWater(press)] = new(Equation, name, "water in the press", "L", LitresOnFilter) { Low = NoLess };
        _numbers[_layout.PressFiltered(press)] = new(Equation, name, "filtrate", "L");
        _numbers[dropped] = new(Equation, name, "dry solids dropped", "g") { Low = NoLessGone };
        _numbers[dropped + 1] = new(Equation, name, "water dropped", "L") { Low = NoLessGone };
        AddContents(_layout.PressHeld(press), Equation, name, "in the press", GramOnFilter, NoLess);
    }

    private void AddContents(int first, string equation, string place, string where, double allowedError, double low)
    {
        for (int content = 0; content < _layout.Contents; content++)
        {
            _numbers[first + content] = Content(equation, place, content, where, allowedError) with { Low = low };
        }
    }

    private StateNumber Content(string equation, string place, int content, string where, double allowedError) =>
        new(equation, place, $"{_parts.Contents.Names[content]} {where}", _parts.Contents.IsWeighed(content) ? "g" : "mol", allowedError);
}
