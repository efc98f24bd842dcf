namespace Sequencer.Sites.Trials;

/// <summary>A fault, and when it begins in a run, in seconds since the start.</summary>
internal sealed record FaultDraw(string Fault, double Seconds);
