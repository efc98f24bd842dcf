namespace Sequencer.Plant.Reaction;

/// <summary>A time and the plant's state at it.</summary>
/// <param name="state">laid out as <see cref="PlantParts.Layout"/> says</param>
internal sealed class Instant(double[] state)
{
    /// <summary>s</summary>
    public double Time { get; set; }

    public double[] State { get; set; } = state;

    /// <summary>The step that it was last within; -1 before.</summary>
    public long Step { get; set; } = -1;
}
