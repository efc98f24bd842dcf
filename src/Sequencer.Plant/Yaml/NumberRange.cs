using System.Globalization;

namespace Sequencer.Plant.Yaml;

/// <summary>The values allowed for a number, both ends included, in the base unit of its dimension.</summary>
public readonly record struct NumberRange(double Low, double High)
{
    /// <summary>Above zero: what a size, a rate or a time constant must be. The low end keeps divisions finite.</summary>
    public static NumberRange Positive => new(1e-9, 1e12);

    public static NumberRange NotNegative => new(0.0, 1e12);

    public static NumberRange Any => new(-1e12, 1e12);

    public bool Contains(double value) => value >= Low && value <= High;

    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Low:G6} .. {High:G6}");
}
