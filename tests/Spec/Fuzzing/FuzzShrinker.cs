namespace Sequencer.Spec.Tests.Fuzzing;

/// <summary>Makes a failing input smaller while it goes on failing in the same way: whole texts, then lines, then tokens.</summary>
internal static class FuzzShrinker
{
    private const int MostTries = 3_000;

    public static FuzzInput Shrink(FuzzInput input, Func<FuzzInput, bool> stillFails)
    {
        int tries = 0;
        bool Fails(FuzzInput candidate) => tries++ < MostTries && stillFails(candidate);
        for (int index = input.Programs.Length - 1; index >= 0 && input.Programs.Length > 1; index--)
        {
            FuzzInput candidate = input with { Programs = input.Programs.RemoveAt(index) };
            input = Fails(candidate) ? candidate : input;
        }

        foreach (string name in input.Libraries.Keys)
        {
            FuzzInput candidate = input with { Libraries = input.Libraries.Remove(name) };
            input = Fails(candidate) ? candidate : input;
        }

        for (int index = 0; index < input.Texts.Length; index++)
        {
            int text = index;
            input = WithoutParts(input, text, content => [.. content.Split('\n')], parts => string.Join('\n', parts), Fails);
            input = WithoutParts(input, text, content => Pieces(content), string.Concat, Fails);
        }

        return input;
    }

    /// <summary>Leaves out runs of parts, long ones first.</summary>
    private static FuzzInput WithoutParts(FuzzInput input, int text, Func<string, List<string>> cut, Func<List<string>, string> join, Func<FuzzInput, bool> fails)
    {
        List<string> parts = cut(input.Texts[text]);
        for (int length = Math.Max(1, parts.Count / 2); length > 0; length /= 2)
        {
            for (int start = 0; start + length <= parts.Count;)
            {
                List<string> fewer = [.. parts.Take(start), .. parts.Skip(start + length)];
                if (fails(input.WithText(text, join(fewer))))
                {
                    parts = fewer;
                }
                else
                {
                    start += length;
                }
            }
        }

        return input.WithText(text, join(parts));
    }

    /// <summary>Tokens with the blanks before them.</summary>
    private static List<string> Pieces(string content)
    {
        List<string> pieces = [];
        int from = 0;
        foreach (FuzzToken token in FuzzToken.Of(content))
        {
            pieces.Add(content[from..token.End]);
            from = token.End;
        }

        pieces.Add(content[from..]);
        return pieces;
    }
}
