using System.Collections.Immutable;
using Sequencer.Plant.Hydraulics;
using Sequencer.Plant.Reaction;

namespace Sequencer.Plant;

/// <summary>
/// Running totals: what has passed each line (L), how long pumps ran dry (s), what each reagent has given (L), what ran over each
/// rim and leaked out of each tank (L), the lowest and highest pH in the tank while a line drew from it to the outside, and what else lines keep the highest of.
/// </summary>
internal sealed class PlantTotals
{
    /// <summary>A line that moves less than this share of its rate does not count as discharging.</summary>
    private const double DischargingFrom = 1e-3;

    private readonly PlantParts _parts;
    private readonly PlantMotion _motion;
    private readonly double[] _lowest;
    private readonly double[] _highest;
    private readonly DryRunning _dry;
    private readonly int[] _leaving;
    private readonly ImmutableArray<HighestOfLine> _kept;
    private double _until;

    public PlantTotals(PlantParts parts, PlantMotion motion)
    {
        _parts = parts;
        _motion = motion;
        _lowest = new double[parts.Pipes.Length];
        _highest = new double[parts.Pipes.Length];
        Array.Fill(_lowest, double.NaN);
        Array.Fill(_highest, double.NaN);
        _dry = new DryRunning(parts, motion);
        _leaving = [.. Enumerable.Range(0, parts.Pipes.Length).Where(line => Leaves(parts.Pipes[line]))];
        _kept = [.. parts.Pipes.SelectMany((pipe, line) => pipe.Description.KeepsHighest.Select(kept => new HighestOfLine(parts, motion, line, kept.Value)))];
        All = [.. Lines(), .. Reagents(), .. Rims(), .. Leaks(), .. Drums(), .. _parts.Presses.SelectMany((press, index) => PlantQuantities.TotalsOfPress(press, index, _parts, _motion))];
    }

    public ImmutableArray<NamedValue> All { get; }

    public void Advance()
    {
        double seconds = _motion.Time - _until;
        _until = _motion.Time;
        _dry.Advance(seconds);
        foreach (int line in _leaving)
        {
            if (IsDischarging(_parts.Pipes[line]))
            {
                double ph = _motion.Waters.Ph(_parts.Pipes[line].FromTank);
                _lowest[line] = double.IsNaN(_lowest[line]) ? ph : Math.Min(_lowest[line], ph);
                _highest[line] = double.IsNaN(_highest[line]) ? ph : Math.Max(_highest[line], ph);
            }
        }

        foreach (HighestOfLine kept in _kept)
        {
            kept.Observe();
        }
    }

    private bool IsDischarging(Pipe pipe) => _motion.Time < _parts.Tanks[pipe.FromTank].DrawnDownFrom
        && pipe.Opening(_motion.Time) > DischargingFrom;

    private static bool Leaves(Pipe pipe) => pipe is { FromTank: >= 0, ToTank: < 0 };

    private IEnumerable<NamedValue> Lines()
    {
        for (int line = 0; line < _parts.Pipes.Length; line++)
        {
            int index = line;
            Pipe pipe = _parts.Pipes[line];
            string name = pipe.Description.Name;
            yield return PlantQuantities.Named(name, "passed", "L", () => _motion.Now[_parts.Layout.Passed(index)]);
            if (_dry.CanBe(index))
            {
                yield return PlantQuantities.Named(name, "ran_dry", "s", () => _dry.Seconds(index));
            }

            if (Leaves(pipe))
            {
                yield return PlantQuantities.Named(name, "pH_lowest", "pH", () => _lowest[index]);
                yield return PlantQuantities.Named(name, "pH_highest", "pH", () => _highest[index]);
            }

            foreach (HighestOfLine kept in _kept.Where(kept => kept.Line == index))
            {
                yield return PlantQuantities.Named(name, $"{kept.What}_highest", kept.Unit, () => kept.Value);
            }
        }
    }

    private IEnumerable<NamedValue> Reagents()
    {
        foreach (string reagent in _parts.Model.Reagents.Select(described => described.Name))
        {
            int source = _parts.Source(reagent);
            yield return PlantQuantities.Named(reagent, "used", "L", () => _parts.DrawnLitres(source, _motion.Now));
        }
    }

    private IEnumerable<NamedValue> Drums() => _parts.Drums.SelectMany((drum, index) => new[]
    {
        PlantQuantities.Named(drum.Description.Name, "filtered", "L", () => _motion.Now[_parts.Layout.Filtered(index)]),
        PlantQuantities.Named(drum.Description.Name, "filter_aid_taken", "g", () => _motion.Now[_parts.Layout.Skimmed(index)]),
        PlantQuantities.Named(drum.Description.Name, "solids_taken", "g", () => _motion.Now[_parts.Layout.Skimmed(index) + 1]),
        PlantQuantities.Named(drum.Description.Name, "wet_taken", "kg", () => drum.Holds.WetKilogramsTaken(_motion.Now)),
        PlantQuantities.Named(drum.Description.Name, "moisture", "%", () => 100.0 * drum.Holds.Moisture(_motion.Now)),
    });

    private IEnumerable<NamedValue> Leaks() => _parts.Tanks.Where(tank => !_parts.IsKnife(tank.Index)).Select(
        tank => PlantQuantities.Named(tank.Description.Name, "leaked", "L", () => _parts.LeakedLitres(tank.Index, _motion.Now)));

    private IEnumerable<NamedValue> Rims() => _parts.Tanks.Where(tank => !_parts.IsKnife(tank.Index)).Select(
        tank => PlantQuantities.Named(tank.Description.Name, "overflowed", "L", () => _motion.Now[_parts.Layout.Overflowed(tank.Index)]));
}
