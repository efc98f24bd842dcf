namespace Sequencer.Plant.Chemistry;

/// <summary>The distinct pairs of charge and activity equation among the species, so that each is evaluated once.</summary>
internal sealed class ActivityClasses
{
    private readonly (double Charge, ActivityCoefficient Activity)[] classes;
    private DebyeHuckelConstants constants;

    public ActivityClasses(ChemicalSystem system, ActivityModel model)
    {
        Model = model;
        classes = [.. system.Species.Select(species => ((double)species.Charge, species.Activity)).Distinct()];
        ClassOf = [.. system.Species.Select(species => Array.IndexOf(classes, (species.Charge, species.Activity)))];
        HalfChargeSquared = [.. classes.Select(item => 0.5 * item.Charge * item.Charge)];
        LnCoefficient = new double[classes.Length];
        LnSlope = new double[classes.Length];
    }

    public ActivityModel Model { get; }

    /// <summary>The class of each species.</summary>
    public int[] ClassOf { get; }

    public double[] HalfChargeSquared { get; }

    /// <summary>ln of each class's activity coefficient, as evaluated last.</summary>
    public double[] LnCoefficient { get; }

    /// <summary>d ln(activity coefficient)/d I of each class, kg/mol.</summary>
    public double[] LnSlope { get; }

    public void SetTemperature(double celsius) => constants = DebyeHuckelConstants.At(celsius);

    /// <summary>
    /// Coefficients at an ionic strength in mol/kg. Above <see cref="EquilibriumSolver.LargestStrengthForActivity"/> they are
    /// held: the equations' linear terms grow without bound where they no longer mean anything.
    /// </summary>
    public void Evaluate(double strength)
    {
        if (Model == ActivityModel.Ideal)
        {
            return;
        }

        double used = Math.Min(strength, EquilibriumSolver.LargestStrengthForActivity);
        double slopeFactor = strength > used ? 0 : Math.Log(10);
        for (int item = 0; item < classes.Length; item++)
        {
            (double charge, ActivityCoefficient activity) = classes[item];
            LnCoefficient[item] = Math.Log(10) * activity.Log10(charge, used, constants);
            LnSlope[item] = slopeFactor * activity.Log10Slope(charge, used, constants);
        }
    }
}
