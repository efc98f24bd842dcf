using System.Collections.Immutable;
using System.Text;
using Sequencer.Spec.Tests.Grammar;

namespace Sequencer.Spec.Tests.Fuzzing;

/// <summary>Makes one input from a seed: programs of the corpus, or sentences of the grammar, with a few things changed.</summary>
internal sealed class FuzzMutator
{
    private const int MostChanges = 4;
    private const int LongestText = 60_000;

    private static readonly string[] Extremes =
    [
        "0", "1", "2", "0.0", "0.001", "0.000000000000001", "99", "255", "256", "1000", "32767", "32768", "65536", "2147483647", "2147483648",
        "4294967296", "999999999999999", "9999999999999999", "123456789012345.6", "576", "577", "1oo1", "5oo5", "9oo9", "0oo2",
    ];

    private static readonly string[] Signs =
    [
        " ", "\n", "\t", "\r", "\0", "\"", "(", ")", "-", "--", "--|", "%", ".", "..", ",", "<", ">", "=", "+", "/", "_", "a", "Z", "0", "9",
        "\u00b5", "\u00b0", "\u2264", "\u201c", "\u00a0", "\u200b", "\u202e", "\ufeff", "\ud800", "\udc00", "\ud83d\ude00", "\u00e4", ";", "[", "'",
    ];

    private static readonly string[] Units = ["m3", "L", "mL", "L/min", "m3/h", "s", "ms", "min", "h", "pH", "kPa", "bar", "%", "degC", "mg/L", "rpm", "mm", "kg"];

    private readonly FuzzCorpus _corpus = FuzzCorpus.OfTheRepository;
    private readonly Random _random;
    private readonly SentenceWriter _writer;
    private readonly ImmutableArray<string> _grammarWords;

    private FuzzMutator(int seed, int number)
    {
        LanguageGrammar grammar = LanguageGrammar.OfTheSpecification;
        _random = new Random(unchecked((seed * 1_000_003) + number));
        _writer = new SentenceWriter(grammar, _random);
        _grammarWords = [.. grammar.Keywords.Order(StringComparer.Ordinal)];
    }

    /// <summary>Input <paramref name="number"/> of a seed: the same two numbers, the same input.</summary>
    public static FuzzInput Make(int seed, int number) => new FuzzMutator(seed, number).Make();

    private FuzzInput Make()
    {
        ImmutableArray<string>.Builder programs = ImmutableArray.CreateBuilder<string>();
        programs.Add(_random.Next(10) == 0 ? FromGrammar() : AnyProgram());
        while (_random.Next(6) == 0)
        {
            programs.Add(AnyProgram());
        }

        FuzzInput input = new(programs.ToImmutable(), _corpus.Libraries);
        bool spoilsLibrary = _random.Next(4) == 0;
        for (int changes = _random.Next(MostChanges + 1); changes > 0; changes--)
        {
            int place = spoilsLibrary && _random.Next(2) == 0 ? _random.Next(input.Texts.Length) : _random.Next(input.Programs.Length);
            string changed = Change(input.Texts[place], input);
            input = changed.Length > LongestText ? input : input.WithText(place, changed);
        }

        // Only the libraries that are asked for: the rest would be read for nothing and hide what a failure is about.
        return input with { Libraries = input.Libraries.Where(library => input.Texts.Any(text => text.Contains(library.Key, StringComparison.Ordinal))).ToImmutableSortedDictionary(StringComparer.Ordinal) };
    }

    private string AnyProgram() => Pick(_random.Next(2) == 0 ? _corpus.Sound : _corpus.Programs);

    private string FromGrammar()
    {
        StringBuilder text = new("language 1\nunit U \"Unit\"\n");
        for (int count = _random.Next(30); count > 0; count--)
        {
            text.Append(SentenceWriter.Text(_writer.Write(_random.Next(3) == 0 ? "statement" : "declaration"))).Append('\n');
        }

        text.Append("procedure\n");
        for (int count = _random.Next(20); count > 0; count--)
        {
            text.Append(SentenceWriter.Text(_writer.Write(_random.Next(4) == 0 ? "step-head" : "step-line"))).Append('\n');
        }

        return text.ToString();
    }

    private string Change(string text, FuzzInput input)
    {
        switch (_random.Next(20))
        {
            case 0:
                return ChangeSign(text);
            case 1 or 2:
                return ChangeLines(text, input);
            case 3 or 4 or 5:
                return Replaced(text, token => token.IsNumber, token => Number(token.Text));
            case 6 or 7 or 8:
                return Replaced(text, token => token.IsName, _ => AnyToken(text, token => token.IsName));
            case 9:
                return Replaced(text, _ => true, token => "");
            case 10:
                return Replaced(text, _ => true, token => token.Text + " " + token.Text);
            case 11:
                return Swapped(text);
            case 12:
                return Replaced(text, _ => true, _ => Pick(_grammarWords));
            case 13:
                return Replaced(text, _ => true, _ => Pick(_corpus.Words));
            case 14:
                return Inserted(text, Named(SentenceWriter.Text(_writer.Write("statement")), text));
            case 15:
                return Deepened(text);
            case 16:
                return Replaced(text, token => Array.IndexOf(Units, token.Text) >= 0, _ => Units[_random.Next(Units.Length)]);
            case 17:
                return Cut(text) + Cut(Pick(_corpus.Programs));
            case 18:
                return Replaced(text, token => token.IsName, token => Misspelt(token.Text));
            default:
                return Inserted(text, Named(SentenceWriter.Text(_writer.Write(_random.Next(2) == 0 ? "declaration" : "step-line")), text));
        }
    }

    private string ChangeSign(string text)
    {
        int place = _random.Next(text.Length + 1);
        int length = Math.Min(_random.Next(3), text.Length - place);
        return text.Remove(place, length).Insert(place, _random.Next(4) == 0 ? "" : Signs[_random.Next(Signs.Length)]);
    }

    private string ChangeLines(string text, FuzzInput input)
    {
        List<string> lines = [.. text.Split('\n')];
        int place = _random.Next(lines.Count);
        int other = _random.Next(lines.Count);
        switch (_random.Next(6))
        {
            case 0:
                lines.RemoveAt(place);
                break;
            case 1:
                lines.Insert(other, lines[place]);
                break;
            case 2:
                (lines[place], lines[other]) = (lines[other], lines[place]);
                break;
            case 3:
                lines.Insert(place, Pick(_corpus.Lines));
                break;
            case 4:
                string[] from = Pick(input.Texts).Split('\n');
                lines.Insert(place, from[_random.Next(from.Length)]);
                break;
            default:
                lines[place] = lines[place] + (place + 1 < lines.Count ? " " + lines[place + 1] : "");
                break;
        }

        return string.Join('\n', lines);
    }

    private string Number(string number) => _random.Next(4) switch
    {
        0 => Extremes[_random.Next(Extremes.Length)],
        1 => number + "0",
        2 => "-" + number,
        _ => _random.Next(1000).ToString(System.Globalization.CultureInfo.InvariantCulture),
    };

    /// <summary>A condition in many brackets or denials, a long chain, or a line far too long.</summary>
    private string Deepened(string text)
    {
        int deep = _random.Next(2) == 0 ? _random.Next(1, 70) : _random.Next(1, 700);
        string name = AnyToken(text, token => token.IsName);
        return _random.Next(6) switch
        {
            0 => Replaced(text, token => token.IsName, token => new string('(', deep) + token.Text + new string(')', deep)),
            1 => Replaced(text, token => token.IsName, token => string.Concat(Enumerable.Repeat("not ", deep)) + token.Text),
            2 => Replaced(text, token => token.IsName, token => string.Join(" and ", Enumerable.Repeat(token.Text, deep))),
            3 => Replaced(text, token => token.IsName, token => string.Join(_random.Next(2) == 0 ? " + " : ", ", Enumerable.Repeat(token.Text, deep))),
            4 => Replaced(text, token => token.IsName || token.Text[0] == '"', token => token.Text[0] == '"' ? "\"" + new string('x', deep * 14) + "\"" : token.Text + new string('x', deep * 14)),
            _ => Replaced(text, token => token.IsName, token => string.Concat(Enumerable.Repeat("not (rising (" + name + " and ", Math.Min(deep, 40))) + token.Text + new string(')', 2 * Math.Min(deep, 40))),
        };
    }

    private string Replaced(string text, Func<FuzzToken, bool> which, Func<FuzzToken, string> by)
    {
        List<FuzzToken> tokens = [.. FuzzToken.Of(text).Where(which)];
        if (tokens.Count == 0)
        {
            return text;
        }

        FuzzToken token = tokens[_random.Next(tokens.Count)];
        return text[..token.Start] + by(token) + text[token.End..];
    }

    private string Swapped(string text)
    {
        List<FuzzToken> tokens = FuzzToken.Of(text);
        if (tokens.Count < 2)
        {
            return text;
        }

        int first = _random.Next(tokens.Count - 1);
        FuzzToken left = tokens[first];
        FuzzToken right = tokens[Math.Min(tokens.Count - 1, first + 1 + _random.Next(_random.Next(2) == 0 ? 1 : 30))];
        return text[..left.Start] + right.Text + text[left.End..right.Start] + left.Text + text[right.End..];
    }

    private string Inserted(string text, string line)
    {
        List<string> lines = [.. text.Split('\n')];
        lines.Insert(_random.Next(lines.Count), line);
        return string.Join('\n', lines);
    }

    /// <summary>The sentence with most of its made-up names replaced by names of the text, so that it can mean something there.</summary>
    private string Named(string sentence, string text) => string.Join(' ', FuzzToken.Of(sentence).Select(token =>
        token.Text is "P101" or "LT101" or "AT_1" or "x" && _random.Next(5) > 0 ? AnyToken(text, other => other.IsName && other.Text.Any(char.IsAsciiLetterUpper)) : token.Text));

    private string AnyToken(string text, Func<FuzzToken, bool> which)
    {
        List<FuzzToken> tokens = [.. FuzzToken.Of(text).Where(which)];
        return tokens.Count == 0 ? "x" : tokens[_random.Next(tokens.Count)].Text;
    }

    private string Misspelt(string word)
    {
        int place = _random.Next(word.Length);
        return _random.Next(3) switch
        {
            0 => word.Remove(place, 1),
            1 => word.Insert(place, word[place].ToString()),
            _ => char.IsAsciiLetterUpper(word[place]) ? word.ToLowerInvariant() : word.ToUpperInvariant(),
        };
    }

    private string Cut(string text) => _random.Next(2) == 0 ? text[.._random.Next(text.Length + 1)] : text[_random.Next(text.Length + 1)..];

    private T Pick<T>(ImmutableArray<T> from) => from[_random.Next(from.Length)];
}
