namespace Sequencer.Text;

/// <summary>
/// Where a lowered thing comes from: the words that made it and, where a module was instantiated,
/// the path of instances that leads to it (null at the top).
/// </summary>
public sealed record Origin(SourceSpan Span, string? Instance = null)
{
    public override string ToString() => Instance is null ? Span.ToString() : $"{Span} in {Instance}";
}
