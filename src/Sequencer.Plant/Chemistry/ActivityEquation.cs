namespace Sequencer.Plant.Chemistry;

/// <summary>The equations for activity coefficients that the constants' database uses.</summary>
public enum ActivityEquation
{
    /// <summary>log g = -A z^2 (sqrt I/(1 + sqrt I) - 0.3 I) (Davies, Ion Association, 1962).</summary>
    Davies,

    /// <summary>log g = -A z^2 sqrt I/(1 + B a sqrt I) + b I (the WATEQ form of Debye and Hückel's equation).</summary>
    ExtendedDebyeHuckel,

    /// <summary>log g = 0.1 I, for a species without charge.</summary>
    Uncharged,
}
