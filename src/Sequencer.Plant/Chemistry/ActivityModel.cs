namespace Sequencer.Plant.Chemistry;

/// <summary>Which activities a solver uses.</summary>
public enum ActivityModel
{
    /// <summary>The equation that the data name for each species, and the activity of water from the dissolved total.</summary>
    FromData,

    /// <summary>Every activity coefficient and the activity of water are 1, as in textbook examples.</summary>
    Ideal,
}
