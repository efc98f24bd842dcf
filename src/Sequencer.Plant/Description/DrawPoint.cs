namespace Sequencer.Plant.Description;

/// <summary>Where a line draws in a tank: so far above its floor, or (a floating arm) so far below the surface.</summary>
public readonly record struct DrawPoint(double Metres, bool IsBelowSurface)
{
    public static DrawPoint Floor { get; } = new(0.0, false);

    /// <summary>What runs over a rim.</summary>
    public static DrawPoint Surface { get; } = new(0.0, true);

    /// <summary>Height above the floor in water of a depth.</summary>
    public double Height(double depth) => IsBelowSurface ? Math.Max(0.0, depth - Metres) : Math.Min(Metres, depth);
}
