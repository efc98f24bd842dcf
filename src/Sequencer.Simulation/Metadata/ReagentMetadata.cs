namespace Sequencer.Simulation.Metadata;

/// <summary>The reagent that an output delivers while it is energised, at its declared rate in litres a minute.</summary>
public sealed record ReagentMetadata(string Output, string Reagent, double LitresPerMinute);
