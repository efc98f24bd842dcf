using Sequencer.Text;

namespace Sequencer.Plant.Yaml;

/// <summary>A single value: <paramref name="Text"/> without its quotes; nothing is read into it yet.</summary>
public sealed record YamlScalar(SourceSpan Span, string Text, bool IsQuoted) : YamlNode(Span)
{
    /// <summary>Nothing is written where a value is due (<c>key:</c>).</summary>
    public bool IsEmpty => Text.Length == 0 && !IsQuoted;

    internal override string Kind => IsEmpty ? "nothing" : "a single value";
}
