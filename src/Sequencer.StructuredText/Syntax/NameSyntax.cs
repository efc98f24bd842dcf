using Sequencer.Text;

namespace Sequencer.StructuredText.Syntax;

/// <summary>A name as written; the case of its letters means nothing.</summary>
public sealed record NameSyntax(string Text, SourceSpan Span)
{
    public override string ToString() => Text;
}
