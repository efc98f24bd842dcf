namespace Sequencer.Sites.Descriptions;

/// <summary>Bounds on a signal at the outlet, in the signal's unit; null where there is none.</summary>
public sealed record ConsentLimit(string Quantity, string Title, double? Low, double? High);
