namespace Sequencer.Plant.Description;

/// <summary>A switch that a person operates, as an emergency stop.</summary>
public sealed record HandSwitchDescription(string Tag, bool NormallyClosed);
