using System.Collections.Immutable;
using System.Text;
using Sequencer.Language.Parsing;

namespace Sequencer.Language.Formatting;

/// <summary>Writes what stands in a file, indented, with the columns of like declarations aligned.</summary>
internal sealed class LayoutWriter
{
    /// <summary>A statement that its author broke is joined where it fits; long ones keep their breaks, and one long line is left.</summary>
    private const int JoinedCharacters = 120;

    private const int Continuation = 4;
    private readonly IReadOnlyList<LayoutItem> _items;
    private readonly StringBuilder _text = new();

    public LayoutWriter(IReadOnlyList<LayoutItem> items) => _items = items;

    public string Write()
    {
        int index = 0;
        while (index < _items.Count)
        {
            if (_items[index] is StatementItem { IsDeclaration: true })
            {
                index = WriteRun(index);
                continue;
            }

            WriteItem(index, null);
            index++;
        }

        return _text.ToString();
    }

    /// <summary>Declarations that begin with the same word, with nothing but comments between; the place behind them.</summary>
    private int WriteRun(int from)
    {
        string word = ((StatementItem)_items[from]).FirstWord;
        List<StatementItem> run = [];
        int end = from;
        for (int index = from; index < _items.Count; index++)
        {
            if (_items[index] is StatementItem { IsDeclaration: true } statement && statement.FirstWord == word)
            {
                run.Add(statement);
                end = index + 1;
            }
            else if (_items[index] is not CommentItem)
            {
                break;
            }
        }

        RunColumns? columns = run.Count == 1 ? null : new RunColumns(run.Select(statement => (statement.Tokens, Rows(statement)[0].To)));
        for (int index = from; index < end; index++)
        {
            WriteItem(index, columns);
        }

        return end;
    }

    private void WriteItem(int index, RunColumns? columns)
    {
        switch (_items[index])
        {
            case CommentItem comment:
                _text.Append(' ', CommentIndentation(index)).Append(comment.Comment);
                break;
            case StatementItem statement:
                WriteStatement(statement, columns);
                break;
            default:
                break;
        }

        _text.Append('\n');
    }

    private void WriteStatement(StatementItem statement, RunColumns? columns)
    {
        StringBuilder text = new();
        string? comment = null;
        foreach (LayoutRow row in Rows(statement))
        {
            if (text.Length > 0)
            {
                AppendComment(text, comment);
                text.Append('\n').Append(' ', statement.Indentation + Continuation);
            }

            text.Append(text.Length == 0 && columns is not null ? columns.Lay(statement.Tokens, row.To) : TokenSpacing.Join(statement.Tokens, row.From, row.To));
            comment = row.Comment;
            if (row.From == row.To)
            {
                text.Append(comment);
                comment = null;
            }
        }

        _text.Append(' ', statement.Indentation).Append(text.Length > ProgramLimits.LineCharacters ? statement.Written : text);
        AppendComment(_text, comment);
    }

    private static void AppendComment(StringBuilder text, string? comment) => text.Append(comment is null ? "" : "  ").Append(comment);

    private static ImmutableArray<LayoutRow> Rows(StatementItem statement)
    {
        if (statement.Rows.Length == 1 || statement.Rows[..^1].Any(row => row.Comment is not null))
        {
            return statement.Rows;
        }

        int count = statement.Tokens.Length;
        bool fits = statement.Indentation + TokenSpacing.Join(statement.Tokens, 0, count).Length <= JoinedCharacters;
        return fits ? [new LayoutRow(0, count, statement.Rows[^1].Comment)] : statement.Rows;
    }

    /// <summary>As the statement that it stands right above, else as the one right before it, else as the next one.</summary>
    private int CommentIndentation(int index)
    {
        LayoutItem? below = Beyond(index, 1);
        LayoutItem? above = Beyond(index, -1);
        StatementItem? beside = below as StatementItem ?? above as StatementItem ?? _items.Skip(index).OfType<StatementItem>().FirstOrDefault();
        return beside?.Indentation ?? 0;
    }

    private LayoutItem? Beyond(int index, int direction)
    {
        int place = index;
        while (place >= 0 && place < _items.Count && _items[place] is CommentItem)
        {
            place += direction;
        }

        return place >= 0 && place < _items.Count ? _items[place] : null;
    }
}
