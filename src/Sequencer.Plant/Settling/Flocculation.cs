namespace Sequencer.Plant.Settling;

/// <summary>
/// How dispersed solids become flocs in stirred water, and flocs break. Of the solids the part f is in flocs; G is the shear (1/s), d the flocs' size:
/// <code>
/// catching:    df/dt = K_A a G (1 - f) - K_B G^2 f            (Argaman and Kaufman, J. San. Eng. Div. ASCE 96 (1970) 223; from memory)
/// size:        dd/dt = g (1 - d / d_G) d,  g = (4 / (3 pi)) a phi G   (Smoluchowski's orthokinetic collisions; Camp and Stein, 1943)
/// largest:     d_G = d_50 sqrt(50 / G)                          (Parker, Kaufman and Jenkins, J. San. Eng. Div. ASCE 98 (1972) 79: a power of G; from memory)
/// sticking:    a = h / (h + 0.02 s)
/// </code>
/// phi is the share of the volume that flocs take, h the weight of hydroxides, s that of other solids: what nothing coats does not stick (our own simplification,
/// as is one size for all flocs).
/// </summary>
internal static class Flocculation
{
    /// <summary>K_A, for alum and kaolin (from memory).</summary>
    public const double Catching = 5.1e-5;

    /// <summary>s; K_B, for alum and kaolin (from memory).</summary>
    public const double Breaking = 1.1e-7;

    /// <summary>1/s; the shear at which the size of flocs is told.</summary>
    private const double UsualShear = 50.0;

    /// <summary>1/s; gentler stirring makes no larger flocs (our own choice).</summary>
    private const double LeastShear = 5.0;

    /// <summary>s; growth that is done sooner is slowed to this: nobody sees it, and it would only cost steps.</summary>
    private const double Soonest = 20.0;

    /// <summary>g of hydroxide for each g of other solids that makes half of the collisions stick (our own choice).</summary>
    private const double CoatsHalf = 0.02;

    public static double Sticking(double hydroxide, double other) => hydroxide <= 0.0 ? 0.0 : hydroxide / (hydroxide + (CoatsHalf * other));

    /// <summary>Change of the part in flocs, 1/s.</summary>
    public static double Rate(double inFlocs, double sticking, double shear, double breaking) =>
        (Catching * sticking * shear * (1.0 - inFlocs)) - (breaking * shear * shear * inFlocs);

    /// <summary>The part in flocs where catching and breaking are even.</summary>
    public static double Even(double sticking, double shear, double breaking) => Catching * sticking / ((Catching * sticking) + (breaking * shear));

    /// <summary>Size that flocs come to, from that at 50 1/s.</summary>
    public static double Largest(double usual, double shear) => usual * Math.Sqrt(UsualShear / Math.Max(LeastShear, shear));

    /// <summary>Change of size, m/s.</summary>
    public static double Growth(double size, double usual, double volumeShare, double sticking, double shear)
    {
        double collisions = 4.0 / (3.0 * Math.PI) * sticking * volumeShare * shear;
        return collisions / (1.0 + (Soonest * collisions)) * size * (1.0 - (size / Largest(usual, shear)));
    }
}
