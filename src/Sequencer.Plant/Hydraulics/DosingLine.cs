using Sequencer.Plant.Description;

namespace Sequencer.Plant.Hydraulics;

/// <summary>A dosing line that may set solid when slurry stands in it.</summary>
internal sealed class DosingLine(DosingLineDescription description, double keptSeconds)
{
    /// <summary>A line this full of slurry, as a share of its strength, counts as dirty.</summary>
    public const double DirtyFrom = 0.1;

    private readonly Ramp _open = new(1.0, keptSeconds);
    private double _standsSince = double.PositiveInfinity;

    public DosingLineDescription Description { get; } = description;

    public bool IsBlocked { get; private set; }

    public double Open(double time) => _open.Value(time);

    public double NextKink(double time) => _open.NextKink(time);

    public void Block(double time, bool blocked)
    {
        IsBlocked = blocked;
        _standsSince = double.PositiveInfinity;
        _open.MoveTo(time, blocked ? 0.0 : 1.0, Ramp.AtOnce);
    }

    /// <summary>Tells whether slurry stands in the line; true if it has just set.</summary>
    public bool Observe(double time, bool stands)
    {
        if (!stands || IsBlocked)
        {
            _standsSince = double.PositiveInfinity;
            return false;
        }

        _standsSince = Math.Min(_standsSince, time);
        if (Description.SetsAfterSeconds is not { } limit || time - _standsSince < limit)
        {
            return false;
        }

        Block(time, true);
        return true;
    }
}
