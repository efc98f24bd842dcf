using Sequencer.Plant.Yaml;

namespace Sequencer.Sites.Trials;

/// <summary>A quantity of the plant that is not known better than from <see cref="Low"/> to <see cref="High"/>, in <see cref="Unit"/> ("" for a plain number).</summary>
internal sealed record Tolerance(Placed<string> Place, double Low, double High, string Unit, Placed<string> Written);
