namespace Sequencer.Plant.Reaction;

/// <summary>
/// One number of a plant's state: the equation and the piece of plant it belongs to, what it is and its unit, in words; the error allowed in a step, which is
/// none where the number only counts; and between what it can be where no tank's volume has to be known.
/// </summary>
internal sealed record StateNumber(string Equation, string Place, string Quantity, string Unit, double AllowedError = double.PositiveInfinity)
{
    public double Low { get; init; } = double.NegativeInfinity;

    public double High { get; init; } = double.PositiveInfinity;

    /// <summary>What it is and what it should not be beyond, in words.</summary>
    public string Beyond(double value) => FormattableString.Invariant(
        $"{Quantity} is {value:G6} {Unit}, and no {(value > High ? FormattableString.Invariant($"more than {High:G6}") : FormattableString.Invariant($"less than {Low:G6}"))} {Unit} can be");
}
