using System.Collections.Immutable;

namespace Sequencer.Export.Writing;

/// <summary>A unit's function block, the variables declared in it and where its steps are kept.</summary>
public sealed record ExportedBlock(
    string Unit, string FunctionBlock, ImmutableArray<ExportedVariable> Variables, ImmutableArray<ExportedStep> Steps);
