using System.Collections.Immutable;

namespace Sequencer.Language.Parsing;

/// <summary>
/// What could have stood where a line broke: in plain words (null where it would only lengthen the
/// message), and the exact words that a misspelling is compared with.
/// </summary>
internal sealed record Expectation(string? Description, ImmutableArray<string> Words);
