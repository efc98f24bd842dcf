using Sequencer.Language.Programs;

namespace Sequencer.Export.Writing;

/// <summary>
/// Where a condition stands in the program: its path names the clocks it needs; outputs mean this scan's
/// value in protections, last scan's elsewhere; a step owns the clocks of its conditions.
/// </summary>
internal sealed class ConditionSite(string path, bool thisScansOutputs = false, Step? step = null)
{
    private readonly Dictionary<Condition, string> _paths = new(ReferenceEqualityComparer.Instance);

    public bool ThisScansOutputs => thisScansOutputs;

    public Step? Step => step;

    /// <summary>The clocks and memories whose statements are already in the text.</summary>
    public HashSet<string> Known { get; } = new(StringComparer.Ordinal);

    /// <summary>The path of a clock of this condition, numbered in the order of its words.</summary>
    public string PathOf(Condition condition, string kind)
    {
        if (!_paths.TryGetValue(condition, out string? known))
        {
            int number = _paths.Count + 1;
            known = number == 1 ? $"{path}.{kind}" : FormattableString.Invariant($"{path}.{kind}{number}");
            _paths.Add(condition, known);
        }

        return known;
    }
}
