namespace Sequencer.Plant.Description;

/// <summary>What a tank holds up to a level above its floor.</summary>
public readonly record struct LevelPoint(double Metres, double Litres);
