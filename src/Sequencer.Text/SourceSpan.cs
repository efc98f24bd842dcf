namespace Sequencer.Text;

/// <summary>A stretch of one file.</summary>
public readonly record struct SourceSpan(SourceText Source, TextSpan Span)
{
    public LinePosition Start => Source.Position(Span.Start);

    public LinePosition End => Source.Position(Span.End);

    public ReadOnlySpan<char> Text => Source.Content.AsSpan(Span.Start, Span.Length);

    public SourceSpan Cover(SourceSpan other) => new(Source, Span.Cover(other.Span));

    /// <summary>Path, line and column, as <c>program.seq:14:10</c>.</summary>
    public override string ToString() => $"{Source.Path}:{Start}";
}
