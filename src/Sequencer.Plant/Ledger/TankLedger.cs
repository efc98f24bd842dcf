namespace Sequencer.Plant.Ledger;

/// <summary>Litres in a tank at the start and now, what it has lost over its rim, and its dry solids at the start and now, kg.</summary>
public sealed record TankLedger(string Name, bool TreatsBatches, double StartLitres, double Litres, double OverflowedLitres, double StartSolidKilograms, double SolidKilograms);
