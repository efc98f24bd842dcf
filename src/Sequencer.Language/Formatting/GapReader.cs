namespace Sequencer.Language.Formatting;

/// <summary>What stands between two tokens: blanks, line ends, comments.</summary>
internal sealed class GapReader
{
    private readonly List<LayoutItem> _lines = [];

    public GapReader(string text, int from, int to)
    {
        int lineEnds = 0;
        int index = from;
        while (index < to)
        {
            if (text[index] == '\n')
            {
                lineEnds++;
                HasLineEnd = true;
            }
            else if (text[index] == '-')
            {
                int end = text.IndexOf('\n', index, to - index);
                end = end < 0 ? to : end;
                KeepComment(text[index..end].TrimEnd(), lineEnds);
                lineEnds = 0;
                index = end;
                continue;
            }

            index++;
        }

        KeepBlank(lineEnds);
    }

    public bool HasLineEnd { get; private set; }

    /// <summary>The comment on the line that the gap begins on.</summary>
    public string? Trailing { get; private set; }

    /// <summary>Comments on lines of their own, and empty lines.</summary>
    public IReadOnlyList<LayoutItem> Lines => _lines;

    private void KeepComment(string comment, int lineEnds)
    {
        if (lineEnds == 0 && Trailing is null && _lines.Count == 0)
        {
            Trailing = comment;
            return;
        }

        KeepBlank(lineEnds);
        _lines.Add(new CommentItem(comment));
    }

    private void KeepBlank(int lineEnds)
    {
        if (lineEnds > 1)
        {
            _lines.Add(new BlankItem());
        }
    }
}
