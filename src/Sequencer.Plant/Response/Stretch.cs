namespace Sequencer.Plant.Response;

/// <summary>A part of a record in one piece, s.</summary>
public readonly record struct Stretch(double From, double To)
{
    public static readonly Stretch Whole = new(double.NegativeInfinity, double.PositiveInfinity);

    public bool Holds(double seconds) => seconds >= From && seconds <= To;
}
