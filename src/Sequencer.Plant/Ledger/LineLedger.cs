namespace Sequencer.Plant.Ledger;

/// <summary>Litres that have passed a line, from a source or tank to a tank or a place outside, and the dry solids with them, kg.</summary>
/// <param name="Name">Of the line.</param>
/// <param name="From">Where it draws.</param>
/// <param name="FromEnd">What stands there.</param>
/// <param name="To">Where it leads.</param>
/// <param name="ToEnd">What stands there.</param>
/// <param name="Litres">By the balances.</param>
/// <param name="SolidKilograms">By the litres and what a litre held whenever it was looked at (<see cref="IPlant.MeterSolids"/>); 0 where it never was.</param>
public sealed record LineLedger(string Name, string From, FlowEnd FromEnd, string To, FlowEnd ToEnd, double Litres, double SolidKilograms);
