using System.Collections.Immutable;

namespace Sequencer.Export.Writing;

/// <summary>A unit's function block and the variables declared in it.</summary>
public sealed record ExportedBlock(string Unit, string FunctionBlock, ImmutableArray<ExportedVariable> Variables);
