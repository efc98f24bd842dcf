using Sequencer.Plant.Description;
using Sequencer.Plant.Reaction;

namespace Sequencer.Plant;

/// <summary>The highest of what has passed a line: its flow, what it let through in 24 h, or the temperature or a content of the water while any came. Not a number before.</summary>
internal sealed class HighestOfLine
{
    /// <summary>L/s; a line that moves less lets nothing through.</summary>
    private const double PassesFrom = 1e-5;

    private const double SecondsPerHour = 3600.0;
    private const double LitresPerCubicMetre = 1000.0;

    private readonly PlantParts _parts;
    private readonly PlantMotion _motion;
    private readonly Func<double, double> _of;

    public HighestOfLine(PlantParts parts, PlantMotion motion, int line, string what)
    {
        (_parts, _motion, Line, What) = (parts, motion, line, what);
        int tank = parts.Pipes[line].FromTank;
        int content = parts.Contents.Names.IndexOf(what);
        if (what == LineDescription.Flow)
        {
            (Unit, _of) = ("m3/h", flow => flow * SecondsPerHour / LitresPerCubicMetre);
        }
        else if (what == LineDescription.InADay)
        {
            LastDay passed = new();
            (Unit, _of) = ("m3", _ => passed.Observe(motion.Time, motion.Now[parts.Layout.Passed(line)]) / LitresPerCubicMetre);
        }
        else if (what == LineDescription.Temperature)
        {
            (Unit, _of) = ("C", _ => InALitre(tank, parts.Layout.Heat(tank)));
        }
        else
        {
            bool isWeighed = parts.Contents.IsWeighed(content);
            double scale = isWeighed ? 1.0 : 1000.0;
            (Unit, _of) = (isWeighed ? "g/L" : "mmol/L", _ => InALitre(tank, parts.Layout.Mixed(tank) + content) * scale);
        }
    }

    public int Line { get; }

    public string What { get; }

    public string Unit { get; }

    public double Value { get; private set; } = double.NaN;

    public void Observe()
    {
        double flow = _motion.Equations.Flows.Of(Line, _motion.Time, _motion.Now);
        if (flow > PassesFrom)
        {
            double now = _of(flow);
            Value = double.IsNaN(Value) ? now : Math.Max(Value, now);
        }
    }

    private double InALitre(int tank, int place) => _motion.Now[place] / _motion.Now[_parts.Layout.Volume(tank)];
}
