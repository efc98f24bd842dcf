using Sequencer.Plant.Description;
using Sequencer.Plant.Hydraulics;

namespace Sequencer.Plant.Reaction;

/// <summary>Where a line draws from outside the tanks: a supply without end, or a reagent's store.</summary>
internal sealed class Source
{
    /// <summary>A slurry that nobody stirs settles to this share of its strength within ten minutes (from memory).</summary>
    private const double SettledStrength = 0.3;
    private const double SettlesInSeconds = 600.0;
    private const double StirsInSeconds = 60.0;

    private readonly Ramp _available;
    private readonly Ramp _strength;
    private readonly Ramp _stirred;
    private bool _isEmptied;
    private bool _isStirred = true;
    private bool _isDrained;

    public Source(string name, double[] content, double[] solid, double celsius, ReagentDescription? reagent, double keptSeconds)
    {
        Name = name;
        Content = content;
        Solid = solid;
        Celsius = celsius;
        Reagent = reagent;
        _available = new Ramp(1.0, keptSeconds);
        _strength = new Ramp(1.0, keptSeconds);
        _stirred = new Ramp(1.0, keptSeconds);
    }

    public string Name { get; }

    /// <summary>What a litre holds at full strength.</summary>
    public double[] Content { get; }

    /// <summary>What of it is solid, as the contents are counted.</summary>
    public double[] Solid { get; }

    public double Celsius { get; }

    /// <summary>Null for a supply.</summary>
    public ReagentDescription? Reagent { get; }

    /// <summary>It gives nothing any more: its store is empty, or it is lost.</summary>
    public bool IsEmpty => _isEmptied || _isDrained;

    /// <summary>1 while there is liquid, 0 when the pump draws air.</summary>
    public double Available(double time) => _available.Value(time);

    /// <summary>Strength as a multiple of what is described.</summary>
    public double Strength(double time) => _strength.Value(time) * _stirred.Value(time);

    public double NextKink(double time) => Math.Min(_available.NextKink(time), Math.Min(_strength.NextKink(time), _stirred.NextKink(time)));

    /// <summary>The fault that the store is empty or the supply lost, or its end.</summary>
    public void Empty(double time, bool empty)
    {
        _isEmptied = empty;
        MoveAvailable(time);
    }

    /// <summary>A batch of reagent made up wrongly.</summary>
    public void ChangeStrength(double time, double multiple) => _strength.MoveTo(time, multiple, Ramp.AtOnce);

    /// <summary>Tells how much is left and whether the slurry is stirred; true if something starts to change by it.</summary>
    public bool Observe(double time, double litresLeft, bool stirred)
    {
        bool drained = litresLeft <= 0.0;
        bool changes = drained != _isDrained || stirred != _isStirred;
        if (drained != _isDrained)
        {
            _isDrained = drained;
            MoveAvailable(time);
        }

        if (stirred != _isStirred)
        {
            _isStirred = stirred;
            double wholeTravel = (stirred ? StirsInSeconds : SettlesInSeconds) / (1.0 - SettledStrength);
            _stirred.MoveTo(time, stirred ? 1.0 : SettledStrength, wholeTravel);
        }

        return changes;
    }

    private void MoveAvailable(double time) => _available.MoveTo(time, IsEmpty ? 0.0 : 1.0, Ramp.AtOnce);
}
