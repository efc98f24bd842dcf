namespace Sequencer.Plant.Chemistry;

/// <summary>A component and its coefficient in a reaction.</summary>
public readonly record struct ComponentCoefficient(string Component, double Coefficient);
