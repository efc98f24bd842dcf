using System.Globalization;

namespace Sequencer.Benchmarks;

/// <summary>One measured value with its unit.</summary>
internal sealed record Figure(string What, double Value, string Unit)
{
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"  {What,-48}{Value,14:#,##0.##} {Unit}");
}
