using Sequencer.Text;

namespace Sequencer.Plant.Yaml;

/// <summary>
/// Stands where a value was refused. The mistake has been reported; whoever reads this node says
/// nothing more about it.
/// </summary>
public sealed record YamlMalformed(SourceSpan Span) : YamlNode(Span)
{
    internal override string Kind => "a refused value";
}
