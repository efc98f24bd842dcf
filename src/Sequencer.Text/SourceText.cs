using System.Collections.Immutable;

namespace Sequencer.Text;

/// <summary>
/// The text of one file, its lines ended by LF, under the path that messages show (relative to the
/// folder that the user named, with forward slashes).
/// </summary>
public sealed class SourceText
{
    private readonly ImmutableArray<int> _lineStarts;

    public SourceText(string path, string content)
    {
        Path = path;
        Content = content.Replace("\r\n", "\n", StringComparison.Ordinal).Replace('\r', '\n');
        _lineStarts = FindLineStarts(Content);
    }

    public string Path { get; }

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

    public SourceSpan At(int start, int length) => new(this, new TextSpan(start, length));

    public SourceSpan Whole => At(0, Content.Length);

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
