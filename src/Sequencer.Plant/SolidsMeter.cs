using Sequencer.Plant.Description;
using Sequencer.Plant.Hydraulics;
using Sequencer.Plant.Reaction;

namespace Sequencer.Plant;

/// <summary>
/// Dry solids in tanks and with what has passed the lines: lime, other solids and filter aid, and of what a filter or a settling tank of this plant holds that which is solid in the water there. What passed a line is its litres times what a litre held, by straight pieces between the times that it was looked at.
/// </summary>
internal sealed class SolidsMeter
{
    private const double GramsPerKilogram = 1000.0;

    private readonly PlantParts _parts;
    private readonly PlantMotion _motion;
    private readonly double[] _gramsEach;
    private readonly double[] _passed;
    private readonly double[] _inALitre;
    private readonly double[] _grams;
    private readonly double[] _leaked;
    private readonly double[] _leakedGrams;

    public SolidsMeter(PlantParts parts, PlantMotion motion)
    {
        (_parts, _motion) = (parts, motion);
        _gramsEach = SolidWeights.Of(parts.Contents, parts.Model.Retained);
        _passed = new double[parts.Pipes.Length];
        _grams = new double[parts.Pipes.Length];
        _leaked = new double[parts.Tanks.Length];
        _leakedGrams = new double[parts.Tanks.Length];
        _inALitre = [.. Enumerable.Range(0, parts.Pipes.Length).Select(GramsInALitre)];
    }

    public void Observe()
    {
        for (int line = 0; line < _passed.Length; line++)
        {
            double passed = _motion.Now[_parts.Layout.Passed(line)];
            double inALitre = GramsInALitre(line);
            _grams[line] += (passed - _passed[line]) * 0.5 * (_inALitre[line] + inALitre);
            (_passed[line], _inALitre[line]) = (passed, inALitre);
        }

        for (int tank = 0; _parts.Layout.FollowsLeaks && tank < _leaked.Length; tank++)
        {
            double leaked = _parts.LeakedLitres(tank, _motion.Now);
            _leakedGrams[tank] += (leaked - _leaked[tank]) * GramsDrawn(tank, DrawPoint.Floor);
            _leaked[tank] = leaked;
        }
    }

    public double KilogramsPassed(int line) => _grams[line] / GramsPerKilogram;

    public double KilogramsLeaked(int tank) => _leakedGrams[tank] / GramsPerKilogram;

    public double KilogramsIn(TankBody tank)
    {
        int settler = _parts.Settler(tank.Index);
        double onFloor = settler >= 0 ? Sum(_motion.Now.Slice(_parts.Layout.Bed(settler), _gramsEach.Length)) : 0.0;
        double dosed = Dosed(_motion.Now.Slice(_parts.Layout.OnTheWay(tank.Index), _gramsEach.Length)) + Dosed(_motion.Now.Slice(_parts.Layout.Mixing(tank.Index), _gramsEach.Length));
        return (MixedIn(tank.Index) + dosed + onFloor) / GramsPerKilogram;
    }

    private double GramsInALitre(int line)
    {
        Pipe pipe = _parts.Pipes[line];
        if (pipe.FromTank < 0)
        {
            Source source = _parts.Sources[pipe.FromSource];
            return Sum(source.Solid) * source.Strength(_motion.Time);
        }

        return GramsDrawn(pipe.FromTank, pipe.Description.Draws);
    }

    /// <summary>In a litre that is drawn at a point of a tank.</summary>
    private double GramsDrawn(int tank, DrawPoint point)
    {
        int settler = _parts.Settler(tank);
        return settler >= 0
            ? _parts.Settlers[settler].SolidsDrawn(point, _motion.Now)
            : MixedIn(tank) / _motion.Now[_parts.Layout.Volume(tank)];
    }

    private double MixedIn(int tank) => _parts.Solubility.Grams(
        tank, _motion.Now.Slice(_parts.Layout.Mixed(tank), _gramsEach.Length), _gramsEach, _motion.Now[_parts.Layout.Volume(tank)]);

    /// <summary>What a reagent brings in solution counts when it has come into the water.</summary>
    private double Dosed(ReadOnlySpan<double> contents) => Sum(contents[_parts.Contents.Lime..], _parts.Contents.Lime);

    private double Sum(ReadOnlySpan<double> contents, int first = 0)
    {
        double grams = 0.0;
        for (int content = 0; content < contents.Length; content++)
        {
            grams += contents[content] * _gramsEach[first + content];
        }

        return grams;
    }
}
