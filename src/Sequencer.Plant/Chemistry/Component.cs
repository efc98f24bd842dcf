namespace Sequencer.Plant.Chemistry;

/// <summary>A component: its total is conserved by every reaction of a system. Named by its ion, as <c>Ca+2</c>.</summary>
public sealed record Component(string Name, int Charge, ActivityCoefficient Activity, string Source);
