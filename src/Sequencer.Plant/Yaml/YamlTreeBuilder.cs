using System.Collections.Immutable;
using Sequencer.Text;
using YamlDotNet.Core;
using YamlDotNet.Core.Events;

namespace Sequencer.Plant.Yaml;

/// <summary>Builds the tree from the parser's events with its own stack, so that nesting cannot exhaust the thread's.</summary>
internal sealed class YamlTreeBuilder(SourceText source, DiagnosticBag diagnostics)
{
    private const string MergeKey = "<<";

    private readonly Stack<OpenGroup> _open = new();
    private YamlNode? _root;
    private int _nodes;
    private int _documents;

    /// <summary>A limit was passed: the rest of the file is not read.</summary>
    public bool IsStopped { get; private set; }

    public void Take(ParsingEvent parsed)
    {
        switch (parsed)
        {
            case DocumentStart:
                StartDocument(parsed);
                break;
            case AnchorAlias alias:
                diagnostics.Add(YamlDiagnostics.NotAllowed(Span(alias), "an alias (`*name`)"));
                Add(new YamlMalformed(Span(alias)));
                break;
            case Scalar scalar:
                Refuse(scalar);
                Add(new YamlScalar(Trimmed(Span(scalar), scalar), scalar.Value, scalar.Style != ScalarStyle.Plain));
                break;
            case MappingStart or SequenceStart:
                Refuse((NodeEvent)parsed);
                Open(parsed);
                break;
            case MappingEnd or SequenceEnd:
                Add(_open.Pop().Close(source, Span(parsed).Span.End, diagnostics));
                break;
            default:
                break;
        }
    }

    public YamlMapping? Finish()
    {
        if (IsStopped)
        {
            return null;
        }

        switch (_root)
        {
            case YamlMapping mapping:
                return mapping;
            case YamlMalformed:
                return null;
            default:
                diagnostics.Add(YamlDiagnostics.NotOneMapping(_root?.Span ?? source.At(0, 0), _root?.Kind ?? "nothing"));
                return null;
        }
    }

    private void StartDocument(ParsingEvent parsed)
    {
        _documents++;
        if (_documents > 1)
        {
            diagnostics.Add(YamlDiagnostics.NotOneMapping(Span(parsed), "more than one document"));
            IsStopped = true;
        }
    }

    private void Open(ParsingEvent parsed)
    {
        _open.Push(new OpenGroup(parsed is MappingStart, Span(parsed).Span.Start));
        if (_open.Count > YamlLimits.Depth)
        {
            diagnostics.Add(YamlDiagnostics.OverLimit(Span(parsed), "groups within groups", YamlLimits.Depth));
            IsStopped = true;
        }
    }

    private void Add(YamlNode node)
    {
        _nodes++;
        if (_nodes > YamlLimits.Nodes)
        {
            diagnostics.Add(YamlDiagnostics.OverLimit(node.Span, "values", YamlLimits.Nodes));
            IsStopped = true;
        }
        else if (_open.TryPeek(out OpenGroup? group))
        {
            group.Add(node);
        }
        else
        {
            _root = node;
        }
    }

    private void Refuse(NodeEvent node)
    {
        if (!node.Anchor.IsEmpty)
        {
            diagnostics.Add(YamlDiagnostics.NotAllowed(Span(node), "an anchor (`&name`)"));
        }

        // The parser gives a quoted scalar the non-specific tag `!`; that one is no tag of the author's.
        if (!node.Tag.IsEmpty && !node.Tag.IsNonSpecific)
        {
            diagnostics.Add(YamlDiagnostics.NotAllowed(Span(node), "a tag (`!name`)"));
        }
    }

    private SourceSpan Span(ParsingEvent parsed) => YamlReader.Spans.Of(source, parsed);

    /// <summary>A block scalar's span runs to the next key; a message needs only what is written.</summary>
    private static SourceSpan Trimmed(SourceSpan span, Scalar scalar)
    {
        int length = span.Text.TrimEnd().Length;
        return scalar.Style is ScalarStyle.Literal or ScalarStyle.Folded
            ? span.Source.At(span.Span.Start, length)
            : span;
    }

    /// <summary>A group or list whose end has not been read yet.</summary>
    private sealed class OpenGroup(bool isMapping, int start)
    {
        private readonly List<YamlNode> _children = [];

        public void Add(YamlNode node) => _children.Add(node);

        public YamlNode Close(SourceText source, int end, DiagnosticBag diagnostics)
        {
            SourceSpan span = source.At(start, Math.Max(EndOf(source.Content, end), start) - start);
            return isMapping ? new YamlMapping(span, Pairs(diagnostics)) : new YamlSequence(span, [.. _children]);
        }

        /// <summary>
        /// A block group has no closing mark of its own: it ends with its last child. A flow group
        /// ends with its bracket, which the parser's mark stands before.
        /// </summary>
        private int EndOf(string content, int end)
        {
            bool isFlow = start < content.Length && content[start] is '{' or '[';
            if (!isFlow)
            {
                return _children.Count > 0 ? _children[^1].Span.Span.End : start;
            }

            return end < content.Length && content[end] is '}' or ']' ? end + 1 : end;
        }

        private ImmutableArray<YamlEntry> Pairs(DiagnosticBag diagnostics)
        {
            Dictionary<string, SourceSpan> seen = new(StringComparer.Ordinal);
            ImmutableArray<YamlEntry>.Builder entries = ImmutableArray.CreateBuilder<YamlEntry>(_children.Count / 2);
            for (int index = 0; index + 1 < _children.Count; index += 2)
            {
                if (_children[index] is not YamlScalar key)
                {
                    if (_children[index] is not YamlMalformed)
                    {
                        diagnostics.Add(YamlDiagnostics.WrongKind(_children[index].Span, "a key", "a single word", _children[index].Kind));
                    }
                }
                else if (key.Text == MergeKey && !key.IsQuoted)
                {
                    diagnostics.Add(YamlDiagnostics.NotAllowed(key.Span, "a merge key (`<<`)"));
                }
                else if (!seen.TryAdd(key.Text, key.Span))
                {
                    diagnostics.Add(YamlDiagnostics.DuplicateKey(key.Span, key.Text, seen[key.Text]));
                }
                else
                {
                    entries.Add(new YamlEntry(key, _children[index + 1]));
                }
            }

            return entries.ToImmutable();
        }
    }
}
