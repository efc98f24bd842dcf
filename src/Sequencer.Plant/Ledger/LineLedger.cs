namespace Sequencer.Plant.Ledger;

/// <summary>Litres that have passed a line, from a source or tank to a tank or a place outside.</summary>
public sealed record LineLedger(string Name, string From, FlowEnd FromEnd, string To, FlowEnd ToEnd, double Litres);
