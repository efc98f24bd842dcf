namespace Sequencer.Simulation.Metadata;

/// <summary>
/// A consent limit on what leaves the site: <see cref="Quantity"/> names a signal or a plant quantity,
/// whose unit the bounds are in; a bound that is null does not apply.
/// </summary>
public sealed record DischargeLimit(string Quantity, string Title, double? Minimum, double? Maximum);
