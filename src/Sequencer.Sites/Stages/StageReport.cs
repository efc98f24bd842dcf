using System.Text.Json.Nodes;

namespace Sequencer.Sites.Stages;

/// <summary>
/// What one stage has to say: a heading line, its outcome, lines for a person and the same for a
/// machine.
/// </summary>
public sealed record StageReport(string Stage, Outcome Outcome, string Headline, IReadOnlyList<string> Lines, JsonNode Json)
{
    /// <summary>The heading of the whole summary, of a stage that neither proves nor checks; null where the outcome says enough.</summary>
    public string? Verdict { get; init; }
}
