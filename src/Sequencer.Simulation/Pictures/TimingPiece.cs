namespace Sequencer.Simulation.Pictures;

/// <summary>From one scan up to another (not included) a lane shows words in a colour, or a bar.</summary>
internal sealed record TimingPiece(long From, long To, string Words, Colour Colour);
