namespace Sequencer.Plant.Ledger;

/// <summary>Litres in a tank at the start and now, and what it has lost over its rim.</summary>
public sealed record TankLedger(string Name, double StartLitres, double Litres, double OverflowedLitres);
