namespace Sequencer.Plant.Description;

/// <summary>What an instrument measures.</summary>
public enum Measured
{
    /// <summary>volume of a tank or store, litres</summary>
    Volume,

    /// <summary>level of a tank above its floor, metres</summary>
    Level,

    /// <summary>pH of a tank, or of what a sample loop brings</summary>
    Ph,

    /// <summary>temperature of a tank, degrees Celsius</summary>
    Temperature,

    /// <summary>flow in a line or sample loop, litres per second</summary>
    Flow,

    /// <summary>redox potential in a tank or of what a sample loop brings, millivolts: the one that the description says, or one that chromium(VI) and sulphite, or hypochlorite and cyanide, give</summary>
    Redox,

    /// <summary>turbidity, NTU: the one that the description says, or in proportion to the solids in the water</summary>
    Turbidity,

    /// <summary>pressure, kilopascals: at a pump in proportion to its speed, at a drum its vacuum, at a press that of its feed</summary>
    Pressure,

    /// <summary>turns of a motor: a mark that passes a switch once a turn</summary>
    Turns,

    /// <summary>electrical conductivity of a tank, or of what a sample loop brings, at its temperature, millisiemens per centimetre</summary>
    Conductivity,
}
