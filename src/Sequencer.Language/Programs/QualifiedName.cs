namespace Sequencer.Language.Programs;

/// <summary>
/// A name as one unit uses it: its own bare (<c>LT301</c>), another unit's with that unit (<c>TK302.LT302</c>).
/// </summary>
public static class QualifiedName
{
    public static string Of(string unit, string name) => $"{unit}.{name}";

    public static bool IsForeign(string name) => name.Contains('.', StringComparison.Ordinal);

    /// <summary>The unit of another unit's name, and the name there.</summary>
    public static (string Unit, string Name) Split(string name)
    {
        int point = name.IndexOf('.', StringComparison.Ordinal);
        return point < 0 ? throw new ArgumentException($"{name} names no unit", nameof(name)) : (name[..point], name[(point + 1)..]);
    }
}
