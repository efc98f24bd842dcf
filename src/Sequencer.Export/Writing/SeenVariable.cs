namespace Sequencer.Export.Writing;

/// <summary>
/// What one unit sees of another. <see cref="Name"/> is its name below that unit; <see cref="SystemName"/> the variable
/// of the transition system that holds it between two scans.
/// </summary>
internal sealed record SeenVariable(
    string Unit, string Name, SeenKind Kind, string Subject, string Type, string Initial, bool Retained, string SystemName)
{
    public string Path => $"{Unit}.{Name}";
}
