namespace Sequencer.Plant.Description;

/// <summary>What kind of thing a name of a plant description stands for.</summary>
internal enum NameKind
{
    Supply,
    Reagent,
    Tank,
    Pump,
    Valve,
    Agitator,
    Feeder,
    Line,
    DosingLine,
    SampleLoop,
    Drum,
    Press,
    SealWater,
    Transmitter,
    Contact,
    Setpoint,
}
