namespace Sequencer.Plant.Ledger;

/// <summary>What the knife of a drum has taken to be carried away: filter aid, other dry solids and the whole with its water, kg.</summary>
public sealed record CakeLedger(string Drum, string Tank, double FilterAidKilograms, double SolidsKilograms, double WetKilograms, double FiltrateLitres, string FiltrateTo);
