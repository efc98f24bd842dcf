namespace Sequencer.Plant.Chemistry;

/// <summary>
/// How the activity coefficient of one dissolved species depends on ionic strength.
/// <c>A</c> and <c>B</c> are used by the extended Debye-Hückel form only: ion size in ångström, and kg/mol.
/// </summary>
public readonly record struct ActivityCoefficient(ActivityEquation Equation, double A, double B)
{
    public static ActivityCoefficient Davies => new(ActivityEquation.Davies, 0, 0);

    public static ActivityCoefficient Uncharged => new(ActivityEquation.Uncharged, 0, 0);

    public static ActivityCoefficient ExtendedDebyeHuckel(double ionSizeAngstrom, double linearTerm) =>
        new(ActivityEquation.ExtendedDebyeHuckel, ionSizeAngstrom, linearTerm);

    /// <summary>log10 of the activity coefficient at <paramref name="ionicStrength"/> mol/kg water.</summary>
    public double Log10(double charge, double ionicStrength, DebyeHuckelConstants constants)
    {
        double root = Math.Sqrt(ionicStrength);
        double chargeSquared = charge * charge;
        return Equation switch
        {
            ActivityEquation.Davies => -constants.A * chargeSquared * ((root / (1 + root)) - (0.3 * ionicStrength)),
            ActivityEquation.ExtendedDebyeHuckel =>
                (-constants.A * chargeSquared * root / (1 + (constants.B * A * root))) + (B * ionicStrength),
            _ => 0.1 * ionicStrength,
        };
    }

    /// <summary>The derivative of <see cref="Log10"/> with respect to ionic strength, kg/mol; ionic strength is above 0.</summary>
    public double Log10Slope(double charge, double ionicStrength, DebyeHuckelConstants constants)
    {
        double root = Math.Sqrt(ionicStrength);
        double chargeSquared = charge * charge;
        double denominator = 1 + (constants.B * A * root);
        return Equation switch
        {
            ActivityEquation.Davies => -constants.A * chargeSquared * ((0.5 / (root * (1 + root) * (1 + root))) - 0.3),
            ActivityEquation.ExtendedDebyeHuckel =>
                (-constants.A * chargeSquared * 0.5 / (root * denominator * denominator)) + B,
            _ => 0.1,
        };
    }
}
