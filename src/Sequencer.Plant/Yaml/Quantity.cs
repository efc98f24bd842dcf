using Sequencer.Text;

namespace Sequencer.Plant.Yaml;

/// <summary>
/// A number with its unit as written. <paramref name="Value"/> is in the base unit of the dimension.
/// </summary>
public sealed record Quantity(double Value, Unit Unit, SourceSpan Span);
