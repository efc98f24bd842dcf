namespace Sequencer.Text;

/// <summary>A use of a module: the name that it was given, with the names of the uses around it, and where it was asked for.</summary>
public sealed record ModuleUse(string Name, SourceSpan Place);
