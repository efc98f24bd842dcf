using Sequencer.Text;

namespace Sequencer.Sites.Descriptions;

/// <summary>A file that the description names, and where it does so.</summary>
public sealed record PlacedFile(string Name, SourceSpan Span);
