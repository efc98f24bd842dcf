namespace Sequencer.Export.Writing;

/// <summary>One block of the text with what its head says.</summary>
/// <param name="Title">The block's name and what it is for.</param>
/// <param name="Origin">Where it comes from, a line each.</param>
/// <param name="Lines">The block.</param>
internal sealed record TextBlock(string Title, IEnumerable<string> Origin, TextLines Lines);
