using System.Globalization;

namespace Sequencer.Simulation.Scenarios;

/// <summary>A number as the scenario's author wrote it, with its unit ("" where there is none).</summary>
public readonly record struct Measure(decimal Value, string Unit)
{
    public override string ToString() =>
        Unit.Length == 0 ? Value.ToString(CultureInfo.InvariantCulture) : string.Create(CultureInfo.InvariantCulture, $"{Value} {Unit}");
}
