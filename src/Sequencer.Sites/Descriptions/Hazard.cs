using System.Collections.Immutable;
using Sequencer.Text;

namespace Sequencer.Sites.Descriptions;

/// <summary>
/// A hazard of the site: met by requirements, or open, with the reason why nothing here covers it.
/// </summary>
public sealed record Hazard(string Id, string Text, ImmutableArray<string> MetBy, string? Open, SourceSpan Span);
