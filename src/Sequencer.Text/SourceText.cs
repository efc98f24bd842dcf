using System.Collections.Immutable;

namespace Sequencer.Text;

/// <summary>
/// The text of one file, its lines ended by LF, under the path that messages show (relative to the
/// folder that the user named, with forward slashes).
/// </summary>
public sealed class SourceText
{
    private readonly ImmutableArray<int> _lineStarts;
    private readonly ImmutableArray<TextPiece> _pieces = [];
    private readonly SourceText? _written;

    public SourceText(string path, string content)
    {
        Path = path;
        Content = content.Replace("\r\n", "\n", StringComparison.Ordinal).Replace('\r', '\n');
        _lineStarts = FindLineStarts(Content);
    }

    /// <summary>A text made from another by putting words in the place of some of its words, line by line.</summary>
    /// <param name="written">The text as it was written.</param>
    /// <param name="content">The text with the words put in; its lines are those of the written one.</param>
    /// <param name="pieces">What each stretch of the content was made from, in order and without gaps.</param>
    /// <param name="use">For which use of a module; null where none is meant.</param>
    public SourceText(SourceText written, string content, ImmutableArray<TextPiece> pieces, ModuleUse? use)
        : this(written.Path, content)
    {
        _written = written;
        _pieces = pieces;
        Use = use;
    }

    public string Path { get; }

    /// <summary>For which use of a module the text is read here; null for a text that stands for itself.</summary>
    public ModuleUse? Use { get; }

    public string Content { get; }

    public int LineCount => _lineStarts.Length;

    /// <summary>Where line <paramref name="line"/> (from 1) starts.</summary>
    public int LineStart(int line) => _lineStarts[line - 1];

    /// <summary>The text of line <paramref name="line"/> (from 1) without its end.</summary>
    public ReadOnlySpan<char> Line(int line)
    {
        int start = _lineStarts[line - 1];
        int end = line < _lineStarts.Length ? _lineStarts[line] - 1 : Content.Length;
        return Content.AsSpan(start, end - start);
    }

    public LinePosition Position(int offset)
    {
        int found = _lineStarts.BinarySearch(offset);
        int line = found >= 0 ? found : ~found - 1;
        return new LinePosition(line + 1, offset - _lineStarts[line] + 1);
    }

    /// <summary>The stretch of the file that a stretch of this text was made from; itself where nothing was put in.</summary>
    public SourceSpan Written(TextSpan span) => _written is null
        ? new SourceSpan(this, span)
        : new SourceSpan(_written, TextSpan.Between(WrittenOffset(span.Start, atEnd: false), WrittenOffset(span.End, atEnd: span.Length > 0)));

    public SourceSpan At(int start, int length) => new(this, new TextSpan(start, length));

    public SourceSpan Whole => At(0, Content.Length);

    /// <summary>Where the words of a stretch were given that were put in as a whole; null where it has words of the text itself.</summary>
    public SourceSpan? Given(TextSpan span) => _written is not null && Piece(span.Start, atEnd: false) is { IsReplaced: true } piece && piece == Piece(span.End, atEnd: true)
        ? piece.Given
        : null;

    private int WrittenOffset(int offset, bool atEnd)
    {
        TextPiece piece = Piece(offset, atEnd);
        return !piece.IsReplaced ? piece.Written.Start + (offset - piece.Start) : atEnd ? piece.Written.End : piece.Written.Start;
    }

    /// <summary>The last piece that begins at the offset or before it; for an end, before it.</summary>
    private TextPiece Piece(int offset, bool atEnd)
    {
        int from = 0;
        int to = _pieces.Length - 1;
        while (from < to)
        {
            int middle = (from + to + 1) / 2;
            bool isBefore = atEnd ? _pieces[middle].Start < offset : _pieces[middle].Start <= offset;
            (from, to) = isBefore ? (middle, to) : (from, middle - 1);
        }

        return _pieces[from];
    }

    private static ImmutableArray<int> FindLineStarts(string content)
    {
        ImmutableArray<int>.Builder starts = ImmutableArray.CreateBuilder<int>();
        starts.Add(0);
        for (int index = content.IndexOf('\n', StringComparison.Ordinal); index >= 0; index = content.IndexOf('\n', index + 1))
        {
            starts.Add(index + 1);
        }

        return starts.ToImmutable();
    }
}
