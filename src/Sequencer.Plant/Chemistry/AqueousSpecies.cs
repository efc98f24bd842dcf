namespace Sequencer.Plant.Chemistry;

/// <summary>A dissolved species formed from components: K = {species}/product of {component}^coefficient.</summary>
public sealed record AqueousSpecies(
    string Name,
    int Charge,
    Stoichiometry Formation,
    EquilibriumConstant Constant,
    ActivityCoefficient Activity,
    string Source);
