namespace Sequencer.Spec.Tests.Grammar;

/// <summary>Writes sentences of a production at random, as lists of tokens.</summary>
internal sealed class SentenceWriter(LanguageGrammar grammar, Random random)
{
    private const int Deep = 12;

    private static readonly Dictionary<string, string[]> Samples = new(StringComparer.Ordinal)
    {
        ["name"] = ["P101", "LT101", "AT_1", "x"],
        ["text"] = ["\"Text\"", "\"Äpfel, and 'more'\""],
        ["number"] = ["0", "12", "4.500", "0.05"],
        ["integer"] = ["1", "20", "300"],
        ["vote"] = ["1oo2", "2oo3"],
        ["address"] = ["%IX0.3", "%QW12", "%ID0"],
        ["measure"] = ["m3", "pH", "kPa", "mg/L", "s"],
    };

    public IReadOnlyList<string> Write(string production)
    {
        List<string> tokens = [];
        Write(new GrammarNode.Reference(production), 0, tokens);
        return tokens;
    }

    private void Write(GrammarNode node, int depth, List<string> tokens)
    {
        switch (node)
        {
            case GrammarNode.Terminal terminal:
                tokens.AddRange(terminal.Words);
                break;
            case GrammarNode.Reference reference when Samples.TryGetValue(reference.Name, out string[]? samples):
                tokens.Add(samples[random.Next(samples.Length)]);
                break;
            case GrammarNode.Reference reference:
                Assert.True(grammar.Productions.TryGetValue(reference.Name, out GrammarNode? production), $"nothing says what a {reference.Name} is");
                Write(production, depth + 1, tokens);
                break;
            case GrammarNode.Sequence sequence:
                foreach (GrammarNode part in sequence.Parts)
                {
                    Write(part, depth, tokens);
                }

                break;
            case GrammarNode.Choice choice:
                Write(Pick(choice, depth), depth, tokens);
                break;
            case GrammarNode.Maybe maybe when depth < Deep && random.Next(2) == 0:
                Write(maybe.Inner, depth, tokens);
                break;
            case GrammarNode.Repeated repeated when depth < Deep:
                Repeat(repeated.Inner, depth, tokens);
                break;
            default:
                break;
        }
    }

    /// <summary>Deep inside, the way that needs no further production where there is one.</summary>
    private GrammarNode Pick(GrammarNode.Choice choice, int depth)
    {
        GrammarNode[] shallow = [.. choice.Ways.Where(way => way is GrammarNode.Terminal || (way is GrammarNode.Reference reference && Samples.ContainsKey(reference.Name)))];
        return depth >= Deep && shallow.Length > 0 ? shallow[random.Next(shallow.Length)] : choice.Ways[random.Next(choice.Ways.Length)];
    }

    /// <summary>Clauses to choose from stand in any order, each at most once; anything else is written up to twice.</summary>
    private void Repeat(GrammarNode inner, int depth, List<string> tokens)
    {
        GrammarNode[] lead = inner is GrammarNode.Sequence { Parts: [.. var before, GrammarNode.Choice] } ? [.. before] : [];
        if ((inner as GrammarNode.Choice ?? (inner as GrammarNode.Sequence)?.Parts[^1] as GrammarNode.Choice) is not { } clauses)
        {
            for (int count = random.Next(3); count > 0; count--)
            {
                Write(inner, depth, tokens);
            }

            return;
        }

        GrammarNode[] ways = [.. clauses.Ways];
        random.Shuffle(ways);
        foreach (GrammarNode way in ways.Take(random.Next(ways.Length + 1)))
        {
            foreach (GrammarNode part in lead)
            {
                Write(part, depth, tokens);
            }

            Write(way, depth, tokens);
        }
    }

    public static string Text(IEnumerable<string> tokens) => string.Join(' ', tokens);
}
