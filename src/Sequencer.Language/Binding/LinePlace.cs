using Sequencer.Language.Syntax;
using Sequencer.Text;

namespace Sequencer.Language.Binding;

/// <summary>Where a logical line starts; turns spans of its tree into places in the file.</summary>
internal readonly record struct LinePlace(SourceText Source, int Offset)
{
    public SourceSpan At(SyntaxNode node) => At(node.Span);

    public SourceSpan At(TextSpan span) => new(Source, span.Shift(Offset));
}
