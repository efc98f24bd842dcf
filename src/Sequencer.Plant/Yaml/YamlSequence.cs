using System.Collections.Immutable;
using Sequencer.Text;

namespace Sequencer.Plant.Yaml;

/// <summary>A list, in written order.</summary>
public sealed record YamlSequence(SourceSpan Span, ImmutableArray<YamlNode> Items) : YamlNode(Span)
{
    internal override string Kind => "a list";
}
