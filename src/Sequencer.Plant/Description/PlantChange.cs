using Sequencer.Plant.Yaml;

namespace Sequencer.Plant.Description;

/// <summary>
/// A quantity of a plant's description with another value: its keys from the left margin on, with points between them
/// (<c>reagents.CAUSTIC.dissolved.sodium</c>), and what is to stand there, as it would be written.
/// </summary>
public sealed record PlantChange(Placed<string> Place, Placed<string> Value);
