namespace Sequencer.Sites.Tests.Variants;

/// <param name="Change">What was written before and after, for the table.</param>
/// <param name="Text">The line as it stands in the variant; null where it is left out.</param>
internal sealed record BrokenLine(string Change, string? Text);
