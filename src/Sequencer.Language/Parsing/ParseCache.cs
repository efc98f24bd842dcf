using Sequencer.Language.Syntax;

namespace Sequencer.Language.Parsing;

/// <summary>
/// Remembers the trees of lines by their text, so that an edit parses one line anew. Bounded by two
/// generations: when the young one is full it becomes the old one, and what is asked for again moves
/// back. Safe to share between threads.
/// </summary>
public sealed class ParseCache
{
    private readonly Lock _gate = new();
    private readonly int _characters;
    private Dictionary<string, StatementSyntax> _young = new(StringComparer.Ordinal);
    private Dictionary<string, StatementSyntax> _old = new(StringComparer.Ordinal);
    private int _youngCharacters;

    public ParseCache()
        : this(ProgramLimits.CachedCharacters)
    {
    }

    /// <param name="characters">How many characters of text each generation may hold.</param>
    public ParseCache(int characters) => _characters = characters;

    /// <summary>How many lines are remembered.</summary>
    public int Count
    {
        get
        {
            lock (_gate)
            {
                return _young.Count + _old.Count;
            }
        }
    }

    internal StatementSyntax Parse(ReadOnlySpan<char> line)
    {
        lock (_gate)
        {
            if (_young.GetAlternateLookup<ReadOnlySpan<char>>().TryGetValue(line, out StatementSyntax? statement))
            {
                return statement;
            }

            string text = line.ToString();
            if (!_old.Remove(text, out statement))
            {
                statement = StatementParser.Parse(text);
            }

            Keep(text, statement);
            return statement;
        }
    }

    private void Keep(string text, StatementSyntax statement)
    {
        if (_youngCharacters + text.Length > _characters)
        {
            _old = _young;
            _young = new Dictionary<string, StatementSyntax>(StringComparer.Ordinal);
            _youngCharacters = 0;
        }

        _young[text] = statement;
        _youngCharacters += text.Length;
    }
}
