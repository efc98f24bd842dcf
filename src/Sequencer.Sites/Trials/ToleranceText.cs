using Sequencer.Plant.Yaml;

namespace Sequencer.Sites.Trials;

/// <summary>A tolerance as it is written: within so much of what the plant's description says, or from a low to a high value.</summary>
public sealed record ToleranceText(Placed<string> Place, Placed<string>? Within, Placed<string>? Low, Placed<string>? High);
