namespace Sequencer.Text;

/// <summary>New words in the place of a stretch of a file; an empty stretch is a place to insert at.</summary>
public readonly record struct TextEdit(SourceSpan Span, string Text);
