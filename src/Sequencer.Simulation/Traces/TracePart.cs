namespace Sequencer.Simulation.Traces;

/// <summary>A line of the program that took part in a run.</summary>
/// <param name="Path">Of its file.</param>
/// <param name="Line">From 1.</param>
/// <param name="Text">The line, without the blanks around it.</param>
/// <param name="Note">What it did; empty where that is plain.</param>
public sealed record TracePart(string Path, int Line, string Text, string Note);
