using System.Collections.Immutable;
using Sequencer.Language.Parsing;
using Sequencer.Language.Syntax;
using Sequencer.Text;

namespace Sequencer.Language.Formatting;

/// <summary>
/// Reads a file without mistakes into what stands in it, comments and empty lines too. It sees tokens, not
/// trees, so that a new statement of the language is laid out without a change here.
/// </summary>
internal sealed class LayoutReader
{
    private readonly string _text;
    private readonly ParseCache _cache;
    private readonly List<LayoutItem> _items = [];
    private bool _isInModule;

    private LayoutReader(string text, ParseCache cache)
    {
        _text = text;
        _cache = cache;
    }

    public static IReadOnlyList<LayoutItem> Read(SourceText source, ParseCache cache)
    {
        LayoutReader reader = new(source.Content, cache);
        LogicalLineReader lines = new(source.Content);
        int position = 0;
        for (LogicalLine? line = lines.Next(); line is not null; line = lines.Next())
        {
            reader.ReadBetween(position, line.Span.Start);
            reader.ReadStatement(line.Span);
            position = line.Span.End;
        }

        reader.ReadBetween(position, source.Content.Length);
        return reader._items;
    }

    private void ReadStatement(TextSpan span)
    {
        string written = _text.Substring(span.Start, span.Length);
        ImmutableArray<Token> tokens = new Tokenizer(written).Read();
        ImmutableArray<LayoutRow>.Builder rows = ImmutableArray.CreateBuilder<LayoutRow>();
        int first = 0;
        for (int index = 1; index < tokens.Length; index++)
        {
            GapReader gap = new(written, tokens[index - 1].Span.End, tokens[index].Span.Start);
            if (!gap.HasLineEnd)
            {
                continue;
            }

            rows.Add(new LayoutRow(first, index, gap.Trailing));
            rows.AddRange(gap.Lines.OfType<CommentItem>().Select(line => new LayoutRow(index, index, line.Comment)));
            first = index;
        }

        rows.Add(new LayoutRow(first, tokens.Length, null));
        StatementSyntax statement = _cache.Parse(written);
        _isInModule &= statement is not ModuleSyntax;
        _items.Add(new StatementItem(statement, tokens, rows.ToImmutable(), written) { IsInModule = _isInModule });
        _isInModule |= statement is ModuleSyntax;
    }

    private void ReadBetween(int from, int to)
    {
        GapReader gap = new(_text, from, to);
        if (gap.Trailing is not null && _items is [.., StatementItem last])
        {
            _items[^1] = last with { Rows = last.Rows.SetItem(last.Rows.Length - 1, last.Rows[^1] with { Comment = gap.Trailing }) };
        }
        else if (gap.Trailing is not null)
        {
            _items.Add(new CommentItem(gap.Trailing));
        }

        _items.AddRange(gap.Lines);
    }
}
