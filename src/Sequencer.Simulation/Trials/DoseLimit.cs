using System.Collections.Immutable;

namespace Sequencer.Simulation.Trials;

/// <summary>
/// What a unit's program may give through an output in one batch, in litres, or the tag of the parameter that says it; and the
/// plant's totals of the lines behind that output.
/// </summary>
public sealed record DoseLimit(string Unit, string Output, double Litres, string? Parameter, ImmutableArray<string> Passed);
