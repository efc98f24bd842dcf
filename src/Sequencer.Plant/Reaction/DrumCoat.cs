using Sequencer.Plant.Description;
using Sequencer.Plant.Filtration;

namespace Sequencer.Plant.Reaction;

/// <summary>What a drum's cloth and the coat on it let through and hold back, by the coat's thickness (m).</summary>
internal sealed class DrumCoat(DrumDescription description)
{
    /// <summary>Share of the drum whose cloth a cracked coat leaves bare (our own choice).</summary>
    private const double CrackedOfArea = 0.01;

    /// <summary>Whether the coat has a crack down to the cloth.</summary>
    public bool IsCracked { get; set; }

    /// <summary>What goes through a crack meets bare cloth.</summary>
    public double Retention(double coat)
    {
        double held = 1.0 - ((1.0 - description.ClothHoldsBack) * Math.Exp(-coat / description.ClosesAtMetres));
        double past = CrackedShare / description.ClothPerMetre / Conductance(coat);
        return ((1.0 - past) * held) + (past * description.ClothHoldsBack);
    }

    /// <summary>1 over the resistance of coat and cloth, m: beside it that of a crack, where there is one.</summary>
    public double Conductance(double coat) =>
        ((1.0 - CrackedShare) / (description.ClothPerMetre + (coat / description.CoatSquareMetres))) + (CrackedShare / description.ClothPerMetre);

    private double CrackedShare => IsCracked ? CrackedOfArea : 0.0;

    public double ReachedPascals(double coat)
    {
        double openness = description.ClothPerMetre * Conductance(coat);
        return description.DeepestPascals / (1.0 + (((description.DeepestPascals / description.BareClothPascals) - 1.0) * openness));
    }

    public double CakeResistance(double pressure) => FilterCake.ResistanceUnder(pressure, description.CakeMetresPerKilogram, description.CakeCompressibility);
}
