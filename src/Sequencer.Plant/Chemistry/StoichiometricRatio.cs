namespace Sequencer.Plant.Chemistry;

/// <summary>Doses and sludge from stoichiometry alone: pure reagents, complete reaction; a real dose is set by test.</summary>
public static class StoichiometricRatio
{
    /// <summary>
    /// kg of one substance that go with 1 kg of another where <paramref name="moles"/> mol of it go with 1 mol of the other.
    /// </summary>
    /// <exception cref="FormatException">a formula cannot be read</exception>
    public static double KilogramsPerKilogram(string substance, string per, double moles) =>
        moles * MolarMass.Of(substance) / MolarMass.Of(per);

    /// <summary>kg of base that neutralise 1 kg of acid, from the protons each mole gives or takes up.</summary>
    /// <exception cref="FormatException">a formula cannot be read</exception>
    public static double Neutralisation(string alkali, int protonsTakenUp, string acid, int protonsGiven) =>
        KilogramsPerKilogram(alkali, acid, (double)protonsGiven / protonsTakenUp);

    /// <summary>kg of alkalinity, as CaCO3 (2 eq/mol), that 1 kg of a coagulant uses up by the protons each of its moles sets free.</summary>
    /// <exception cref="FormatException">a formula cannot be read</exception>
    public static double AlkalinityAsCalciumCarbonate(string coagulant, int protonsSetFree) =>
        KilogramsPerKilogram("CaCO3", coagulant, protonsSetFree / 2.0);
}
