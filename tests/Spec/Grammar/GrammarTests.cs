using Sequencer.Language.Checking;
using Sequencer.Testing;
using Sequencer.Text;

namespace Sequencer.Spec.Tests.Grammar;

/// <summary>
/// The grammar in <c>spec/language.md</c> and the parser are equal: sentences written from the one are read by the other, what
/// the other reads the one recognises, and of sentences with a mistake in them both say the same.
/// </summary>
public sealed class GrammarTests
{
    private const int SentencesOfEach = 200;
    private static readonly LanguageGrammar Grammar = LanguageGrammar.OfTheSpecification;
    private static readonly LanguageGrammar WithoutKinds = Grammar.WithoutKinds();

    public static TheoryData<string> Statements => [.. ((GrammarNode.Choice)Grammar.Productions["statement"]).Ways.Select(way => ((GrammarNode.Reference)way).Name)];

    [Theory]
    [MemberData(nameof(Statements))]
    public void The_parser_reads_what_the_grammar_writes(string production)
    {
        SentenceWriter writer = new(Grammar, new Random(1));
        for (int count = 0; count < SentencesOfEach; count++)
        {
            IReadOnlyList<string> tokens = writer.Write(production);
            if (!IsAmbiguous(tokens))
            {
                string? mistake = Mistake(tokens);
                Assert.True(mistake is null, $"{SentenceWriter.Text(tokens)}\n{mistake}");
            }
        }
    }

    [Theory]
    [MemberData(nameof(Statements))]
    public void Of_sentences_with_a_mistake_grammar_and_parser_say_the_same(string production)
    {
        Random random = new(2);
        SentenceWriter writer = new(Grammar, random);
        for (int count = 0; count < SentencesOfEach; count++)
        {
            List<string> tokens = [.. writer.Write(production)];
            Spoil(tokens, writer, random);
            if (tokens.Count == 0 || IsAmbiguous(tokens))
            {
                continue;
            }

            bool isSentence = Recogniser.Accepts(WithoutKinds, "statement", tokens);
            string? mistake = Mistake(tokens, out bool hides);
            Assert.True(hides || isSentence == mistake is null, $"{SentenceWriter.Text(tokens)}\nby the grammar {(isSentence ? "sound" : "no sentence")}, by the parser {mistake ?? "sound"}");
        }
    }

    public static TheoryData<string> Programs =>
    [
        .. Documents.Blocks.Where(block => block.Tag == "seq clean").Select(block => $"{block.Path}:{block.Line}"),
        .. Directory.EnumerateFiles(RepositoryPath.At("sequences"), "*.seq", SearchOption.AllDirectories).Select(path => Path.GetRelativePath(RepositoryPath.Root, path)),
    ];

    [Theory]
    [MemberData(nameof(Programs))]
    public void The_grammar_recognises_every_program_of_the_repository(string place)
    {
        string text = place.EndsWith(".seq", StringComparison.Ordinal)
            ? File.ReadAllText(RepositoryPath.At(place))
            : Documents.Blocks.Single(block => $"{block.Path}:{block.Line}" == place).Text;
        string? unread = Recogniser.Unread(Grammar, "program", Recogniser.Tokens(text));
        Assert.True(unread is null, $"not read on from: {unread}");
    }

    /// <summary>
    /// <c>after A -3 &lt; B within 1 s</c> can be read in two ways, and so can <c>after A at step 20 within 1 s</c>; the parser
    /// takes the longest first condition. The comma, which may be left out, tells them apart. The text behind <c>answered</c> may be
    /// the answer or what ends the line.
    /// </summary>
    private static bool IsAmbiguous(IReadOnlyList<string> tokens) =>
        (tokens[0] == "require" && tokens.Contains("after") && (tokens.Contains("-") || tokens.Contains("(") || tokens.Contains("at")))
        || (tokens[0] == "start" && tokens.Count > 1 && tokens[^2] == "answered");

    /// <summary>Leaves a token out, doubles it, changes places with the next, or puts one of another sentence there.</summary>
    private static void Spoil(List<string> tokens, SentenceWriter writer, Random random)
    {
        int place = random.Next(tokens.Count);
        switch (random.Next(4))
        {
            case 0:
                tokens.RemoveAt(place);
                break;
            case 1:
                tokens.Insert(place, tokens[place]);
                break;
            case 2 when place + 1 < tokens.Count:
                (tokens[place], tokens[place + 1]) = (tokens[place + 1], tokens[place]);
                break;
            default:
                IReadOnlyList<string> other = writer.Write("statement");
                tokens[place] = other[random.Next(other.Count)];
                break;
        }
    }

    /// <summary>The first message of the parser on the sentence as a line of a program; null where it reads it. Clauses given twice are read.</summary>
    private static string? Mistake(IReadOnlyList<string> tokens) => Mistake(tokens, out _);

    /// <param name="tokens">The sentence.</param>
    /// <param name="hides">A clause is given twice: behind that the parser looks for no other mistake in the line.</param>
    private static string? Mistake(IReadOnlyList<string> tokens, out bool hides)
    {
        string program = $"language 1\nunit U \"Unit\"\n{SentenceWriter.Text(tokens)}\n";
        CheckResult result = ProgramChecker.Check(new SourceText("sentence.seq", program), 100);
        hides = result.Diagnostics.Any(diagnostic => diagnostic.Code == "SEQ0116");
        Diagnostic? found = result.Diagnostics.FirstOrDefault(diagnostic =>
            diagnostic.Code is "SEQ0103" or "SEQ0104" or "SEQ0105" or "SEQ0106" or "SEQ0107" or "SEQ0108" or "SEQ0109" or "SEQ0110" or "SEQ0111" or "SEQ0113" or "SEQ0114" or "SEQ0115");
        return found is null ? null : $"{found.Code} {found.Message}";
    }
}
