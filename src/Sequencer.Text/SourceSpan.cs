namespace Sequencer.Text;

/// <summary>A stretch of one file.</summary>
public readonly record struct SourceSpan(SourceText Source, TextSpan Span)
{
    /// <summary>The stretch of the file that this one was made from, where words were put into its text.</summary>
    public SourceSpan Written => Source.Written(Span);

    /// <summary>Where all of this stretch was first written: for words that were put in, where they were given.</summary>
    public SourceSpan Cause
    {
        get
        {
            SourceSpan cause = this;
            while (cause.Source.Given(cause.Span) is { } given)
            {
                cause = given;
            }

            return cause;
        }
    }

    public LinePosition Start => Written.Source.Position(Written.Span.Start);

    public LinePosition End => Written.Source.Position(Written.Span.End);

    public ReadOnlySpan<char> Text => Source.Content.AsSpan(Span.Start, Span.Length);

    public SourceSpan Cover(SourceSpan other) => new(Source, Span.Cover(other.Span));

    /// <summary>Path, line and column, as <c>program.seq:14:10</c>.</summary>
    public string Place => $"{Source.Path}:{Start}";

    /// <summary>The place and, in the text of a module, which use of it and where that stands.</summary>
    public override string ToString() => Source.Use is { } use ? $"{Place} for {use.Name} ({use.Place.Place})" : Place;
}
