using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using System.Text.RegularExpressions;

namespace Sequencer.Export.Writing;

/// <summary>
/// Names of a text that are longer than they may be, and what stands for each. A short name comes from its long one alone: words are cut, and four signs
/// that come from the whole name keep names apart that are cut alike. So an edit elsewhere leaves it as it is.
/// </summary>
internal sealed partial class ShortNames
{
    /// <summary>Under it a shortened name could hardly be read.</summary>
    public const int Least = 20;

    /// <summary>What words of letters are cut to before one is left out.</summary>
    private const int ShortestWord = 3;
    private const int Signs = 4;

    /// <summary>No vowels: the signs spell nothing.</summary>
    private const string Alphabet = "0123456789BCDFGHJKLMNPQRSTVWXZ";

    private readonly int _longest;
    private readonly SortedDictionary<string, string> _byName = new(StringComparer.OrdinalIgnoreCase);

    /// <param name="blocks">The text.</param>
    /// <param name="longest">The most letters; null leaves all names as they are.</param>
    public ShortNames(IEnumerable<TextBlock> blocks, int? longest)
    {
        if (longest is not { } most)
        {
            return;
        }

        _longest = most;

        HashSet<string> taken = new(StringComparer.OrdinalIgnoreCase);
        SortedSet<string> tooLong = new(StringComparer.OrdinalIgnoreCase);
        HashSet<string>.AlternateLookup<ReadOnlySpan<char>> shorter = taken.GetAlternateLookup<ReadOnlySpan<char>>();
        foreach (string text in blocks.Select(block => block.Lines.ToString()))
        {
            foreach ((int start, int length) in NamesIn(text))
            {
                _ = length > most ? tooLong.Add(text.Substring(start, length)) : shorter.Add(text.AsSpan(start, length));
            }
        }

        foreach (string name in tooLong)
        {
            int turn = 0;
            string cut = Shortened(name, most, turn);
            while (!taken.Add(cut))
            {
                cut = Shortened(name, most, ++turn);
            }

            _byName.Add(name, cut);
        }
    }

    /// <summary>Every short name with its long one, by the alphabet of the long ones.</summary>
    public void Table(TextLines text)
    {
        if (_byName.Count == 0)
        {
            return;
        }

        int widest = _byName.Values.Max(name => name.Length);
        text.Comment("Names that were too long, and what stands for each. The last four signs of a short name come from the whole name:");
        foreach ((string name, string cut) in _byName)
        {
            text.Comment($"  {cut.PadRight(widest)}  {name}");
        }
    }

    /// <summary>A name, or the names of an instance and its member.</summary>
    public string Of(string path) => _byName.Count == 0 ? path : string.Join('.', path.Split('.').Select(name => _byName.GetValueOrDefault(name, name)));

    public ExportedVariable Of(ExportedVariable variable) => variable with { Name = Of(variable.Name) };

    public ExportedBlock Of(ExportedBlock block) => block with
    {
        Variables = [.. block.Variables.Select(Of)],
        Copies = [.. block.Copies.Select(Of)],
        Steps = [.. block.Steps.Select(step => step with { Branch = Of(step.Branch), Copy = Of(step.Copy) })],
    };

    /// <summary>The lines with short names; what stood one below the other does so again.</summary>
    public TextLines In(TextLines block)
    {
        if (_byName.Count == 0)
        {
            return block;
        }

        TextLines lines = new();
        List<string>? section = null;
        foreach (string line in block.ToString().TrimEnd('\n').Split('\n'))
        {
            string trimmed = line.Trim();
            if (section is null && trimmed.StartsWith("VAR", StringComparison.Ordinal) && !trimmed.Contains(':', StringComparison.Ordinal))
            {
                lines.Add(line);
                section = [];
            }
            else if (section is not null && trimmed != "END_VAR")
            {
                section.Add(line);
            }
            else
            {
                Array.ForEach(Aligned(section ?? []), lines.Add);
                section = null;
                lines.Add(Replaced(line));
            }
        }

        return lines;
    }

    private string Replaced(string line)
    {
        StringBuilder text = new();
        int end = 0;
        foreach ((int start, int length) in NamesIn(line))
        {
            if (length > _longest && _byName.TryGetValue(line.Substring(start, length), out string? cut))
            {
                text.Append(line, end, start - end).Append(cut);
                end = start + length;
            }
        }

        return end == 0 ? line : text.Append(line, end, line.Length - end).ToString();
    }

    private string[] Aligned(IReadOnlyList<string> section)
    {
        int[] before = [.. section.Select(Colon).Where(place => place >= 0)];
        string[] lines = [.. section.Select(line => Colon(line) is >= 0 and int place ? Replaced(line[..place]).TrimEnd() + Replaced(line[place..]) : line)];
        if (before.Distinct().Count() > 1 || before.Length == 0)
        {
            return lines;
        }

        int widest = lines.Max(Colon);
        return [.. lines.Select(line => Colon(line) is >= 0 and int place ? line[..place].PadRight(widest) + line[place..] : line)];
    }

    /// <summary>Where the type of a declaration begins; -1 in a line of another kind.</summary>
    private static int Colon(string line) =>
        line.TrimStart().StartsWith("(*", StringComparison.Ordinal) ? -1 : line.IndexOf(" : ", StringComparison.Ordinal);

    private static string Shortened(string name, int most, int turn)
    {
        int room = most - Signs - 1;
        List<string> words = [.. name.Split('_')];
        Func<bool>[] ways = [() => StepsByLetter(words), () => Cut(words, ShortestWord), () => LeaveOut(words, IsLetters), () => Cut(words, 1), () => LeaveOut(words, _ => true)];
        bool isShorter = true;
        while (isShorter && words.Sum(word => word.Length + 1) - 1 > room)
        {
            isShorter = ways.Any(way => way());
        }

        string left = string.Join('_', words);
        left = left[..Math.Min(left.Length, room)].TrimEnd('_');
        byte[] hash = SHA256.HashData(Encoding.UTF8.GetBytes(name.ToUpperInvariant() + (turn == 0 ? "" : turn.ToString(CultureInfo.InvariantCulture))));
        return $"{left}_{string.Concat(hash.Take(Signs).Select(part => Alphabet[part % Alphabet.Length]))}";
    }

    /// <summary><c>Step30</c> is as clear as <c>S30</c>. Answers whether a word became shorter, as the others do.</summary>
    private static bool StepsByLetter(List<string> words)
    {
        int step = words.FindIndex(word => StepNumber().IsMatch(word));
        if (step >= 0)
        {
            words[step] = "S" + words[step]["Step".Length..];
        }

        return step >= 0;
    }

    /// <summary>Takes a letter from the longest word of letters, the last of several.</summary>
    private static bool Cut(List<string> words, int shortest)
    {
        int longest = -1;
        for (int index = 0; index < words.Count; index++)
        {
            if (words[index].Length > shortest && IsLetters(words[index]) && (longest < 0 || words[index].Length >= words[longest].Length))
            {
                longest = index;
            }
        }

        if (longest >= 0)
        {
            words[longest] = words[longest][..^1];
        }

        return longest >= 0;
    }

    /// <summary>Takes out the word nearest to the middle.</summary>
    private static bool LeaveOut(List<string> words, Func<string, bool> which)
    {
        int[] inner = [.. Enumerable.Range(1, Math.Max(0, words.Count - 2)).Where(place => which(words[place])).OrderBy(place => Math.Abs((2 * place) - words.Count + 1))];
        if (inner.Length > 0)
        {
            words.RemoveAt(inner[0]);
        }

        return inner.Length > 0;
    }

    /// <summary>Tags and numbers say more than other words.</summary>
    private static bool IsLetters(string word) => word.All(char.IsAsciiLetter);

    [GeneratedRegex("^Step[0-9]+$")]
    private static partial Regex StepNumber();

    /// <summary>Names and words of the text, without what looks like one and is none: comments, numbers, durations, addresses.</summary>
    private static IEnumerable<(int Start, int Length)> NamesIn(string text)
    {
        int place = 0;
        while (place < text.Length)
        {
            char letter = text[place];
            if (letter == '(' && place + 1 < text.Length && text[place + 1] == '*')
            {
                int end = text.IndexOf("*)", place, StringComparison.Ordinal);
                place = end < 0 ? text.Length : end + 2;
            }
            else if (char.IsAsciiLetter(letter))
            {
                int end = EndOfWord(text, place);
                bool isDuration = end < text.Length && text[end] == '#';
                if (!isDuration)
                {
                    yield return (place, end - place);
                }

                place = isDuration ? EndOfWord(text, end + 1) : end;
            }
            else
            {
                place = letter == '%' || char.IsAsciiDigit(letter) ? EndOfWord(text, place + 1) : place + 1;
            }
        }
    }

    private static int EndOfWord(string text, int place)
    {
        while (place < text.Length && (char.IsAsciiLetterOrDigit(text[place]) || text[place] == '_'))
        {
            place++;
        }

        return place;
    }
}
