namespace Sequencer.Export.Writing;

/// <summary>A variable's name in the text and its path below the unit in the transition system.</summary>
public sealed record ExportedVariable(string Path, string Name);
