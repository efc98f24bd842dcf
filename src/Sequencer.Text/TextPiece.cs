namespace Sequencer.Text;

/// <summary>
/// A stretch of a text with words put in, from <see cref="Start"/> on to the next one: either as written or, where
/// <see cref="IsReplaced"/>, all of it in the place of <see cref="Written"/>; then <see cref="Given"/> is where the words come from.
/// </summary>
public readonly record struct TextPiece(int Start, TextSpan Written, bool IsReplaced, SourceSpan? Given = null);
