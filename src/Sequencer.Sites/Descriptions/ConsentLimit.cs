using Sequencer.Text;

namespace Sequencer.Sites.Descriptions;

/// <summary>Bounds on a signal or a quantity of the plant, in its unit; null where there is none.</summary>
public sealed record ConsentLimit(string Quantity, string Title, double? Low, double? High, SourceSpan Span);
