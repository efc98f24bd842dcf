using Sequencer.Text;

namespace Sequencer.Plant.Yaml;

/// <summary>A value read from a file with the place it was read at, for later messages about it.</summary>
public sealed record Placed<T>(T Value, SourceSpan Span);
