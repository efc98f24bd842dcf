namespace Sequencer.Text;

/// <summary>The other place that a diagnostic is about, with a few words on its part in it.</summary>
public sealed record RelatedNote(SourceSpan Span, string Message);
