namespace Sequencer.Plant.Reaction;

/// <summary>
/// How much of each content stays dissolved in the water of each tank, as its equilibrium said when the pH was last solved; what is there beyond it is solid. Until it is told anew a water dissolves
/// as much of it in a litre, or all of it where none was solid. What no chemistry follows (lime, other solids, filter aid, a substance of which no solid may form) is solid altogether.
/// </summary>
internal sealed class Solubility(int tanks, int contents)
{
    /// <summary>Of a content: a smaller share that comes out or dissolves changes no equation, so that a step need not begin anew for it.</summary>
    private const double Seen = 1e-4;

    /// <summary>mol/L: more than any water has.</summary>
    private const double All = double.MaxValue;

    private readonly double[] _molPerLitre = new double[tanks * contents];

    /// <summary>Tells of a content what is dissolved of how much, mol/L; true if that is seen.</summary>
    public bool Take(int tank, int content, double dissolved, double total)
    {
        double solid = total > 0.0 ? 1.0 - (dissolved / total) : 0.0;
        ref double known = ref _molPerLitre[(tank * contents) + content];
        double before = total > 0.0 ? Math.Max(0.0, 1.0 - (known / total)) : 0.0;
        if (known > 0.0 && Math.Abs(solid - before) <= Seen)
        {
            return false;
        }

        known = solid <= Seen ? All : dissolved;
        return true;
    }

    /// <summary>The solid part, mol or g, of so much of a content in so many litres of a tank's water.</summary>
    public double Solid(int tank, int content, double amount, double litres)
    {
        double soluble = _molPerLitre[(tank * contents) + content];
        return soluble == 0.0 ? amount : Math.Max(0.0, amount - (soluble * litres));
    }

    /// <summary>Grams of solids in a tank's water, by the dry grams of each content.</summary>
    public double Grams(int tank, ReadOnlySpan<double> amounts, ReadOnlySpan<double> gramsEach, double litres)
    {
        double sum = 0.0;
        for (int content = 0; content < gramsEach.Length; content++)
        {
            if (gramsEach[content] > 0.0)
            {
                sum += Math.Max(0.0, Solid(tank, content, amounts[content], litres)) * gramsEach[content];
            }
        }

        return sum;
    }
}
