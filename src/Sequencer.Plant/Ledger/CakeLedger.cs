namespace Sequencer.Plant.Ledger;

/// <summary>What a drum's knife or a press has given to be carried away: filter aid, other dry solids and the whole with its water, kg; and the filtrate that passed.</summary>
/// <param name="Filter">The drum or press.</param>
/// <param name="Tank">What it draws from.</param>
/// <param name="TakenBy">Where the cake goes, as <c>knife of F220</c>.</param>
/// <param name="FilterAidKilograms">Dry; of a press among the other solids.</param>
/// <param name="SolidsKilograms">Dry.</param>
/// <param name="WetKilograms">All of it.</param>
/// <param name="FiltrateLitres">Litres of filtrate.</param>
/// <param name="FiltrateTo">The tank that takes it.</param>
/// <param name="StartHeldKilograms">Dry, on it at the start.</param>
/// <param name="HeldKilograms">Dry, on it now.</param>
/// <param name="TakenLitres">Water and grains of what it has given.</param>
/// <param name="StartHeldLitres">Water and grains, on it at the start.</param>
/// <param name="HeldLitres">Water and grains, on it now.</param>
/// <param name="HeldWaterLitres">Water alone.</param>
/// <param name="CoatMillimetres">Of filter aid on a drum now; null of a press.</param>
/// <param name="CutMillimetres">Of coat that the knife has taken; null of a press.</param>
public sealed record CakeLedger(
    string Filter, string Tank, string TakenBy, double FilterAidKilograms, double SolidsKilograms, double WetKilograms, double FiltrateLitres, string FiltrateTo, double StartHeldKilograms, double HeldKilograms,
    double TakenLitres, double StartHeldLitres, double HeldLitres, double HeldWaterLitres, double? CoatMillimetres, double? CutMillimetres);
