namespace Sequencer.Export.Writing;

/// <summary>
/// One variable of a function block. <see cref="Path"/> is the name that the transition system has for
/// it below its unit, where it has one.
/// </summary>
internal sealed record Declaration(
    VariableSection Section,
    string Name,
    string Type,
    string? Initial,
    string Comment,
    string Path);
