using System.Collections.Immutable;

namespace Sequencer.Export.Writing;

/// <summary>
/// A function block that stands for a unit, or for all units of a site together: the variables declared in it, where steps
/// are kept, and the <see cref="Copies"/> that it keeps of variables of the program for other units to see.
/// </summary>
public sealed record ExportedBlock(
    string Unit, string FunctionBlock, ImmutableArray<ExportedVariable> Variables, ImmutableArray<ExportedStep> Steps)
{
    public ImmutableArray<ExportedVariable> Copies { get; init; } = [];
}
