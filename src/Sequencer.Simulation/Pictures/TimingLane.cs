using System.Collections.Immutable;

namespace Sequencer.Simulation.Pictures;

/// <summary>A row of a timing diagram.</summary>
/// <param name="Tag">Its name, in the margin.</param>
/// <param name="Description">What it is, beside the name.</param>
/// <param name="Pieces">What it shows, one after the other.</param>
/// <param name="IsBar">On and off, drawn as a bar on a line; else boxes with words.</param>
internal sealed record TimingLane(string Tag, string Description, ImmutableArray<TimingPiece> Pieces, bool IsBar);
