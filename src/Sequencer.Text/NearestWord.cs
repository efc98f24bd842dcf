namespace Sequencer.Text;

/// <summary>Finds what a misspelt word was meant to be.</summary>
public static class NearestWord
{
    private const int LongestCompared = 64;

    /// <summary>
    /// The one candidate with the fewest slips of the pen (a letter missing, added, changed, or two swapped);
    /// null where none is near or where two are equally near. One slip is allowed in up to four
    /// letters, two in more; a difference in case only costs nothing.
    /// </summary>
    public static string? Find(string word, IEnumerable<string> candidates)
    {
        int best = Allowed(word.Length) + 1;
        string? found = null;
        bool tied = false;
        foreach (string candidate in candidates)
        {
            if (Math.Abs(candidate.Length - word.Length) > best || word.Length > LongestCompared || candidate == found)
            {
                continue;
            }

            int distance = Distance(word, candidate);
            if (distance < best)
            {
                (best, found, tied) = (distance, candidate, false);
            }
            else if (distance == best && found is not null)
            {
                tied = true;
            }
        }

        return tied ? null : found;
    }

    /// <summary>
    /// The candidate that alone is as near as <see cref="Find"/> allows, or that differs in case only: near enough to put it
    /// there without asking. Two tags of one length that differ in digits only are two devices and no misspelling.
    /// </summary>
    public static string? Only(string word, IEnumerable<string> candidates)
    {
        if (word.Length > LongestCompared)
        {
            return null;
        }

        string[] near =
        [
            .. candidates.Distinct(StringComparer.Ordinal)
                .Where(candidate => Math.Abs(candidate.Length - word.Length) <= Allowed(word.Length) && Distance(word, candidate) <= Allowed(word.Length)),
        ];
        string[] same = [.. near.Where(candidate => string.Equals(candidate, word, StringComparison.OrdinalIgnoreCase))];
        string[] chosen = same.Length > 0 ? same : near;
        return chosen is [var only] && !DifferInDigits(word, only) ? only : null;
    }

    private static bool DifferInDigits(string left, string right) =>
        left.Length == right.Length && left.Zip(right).All(pair => Same(pair.First, pair.Second) || (char.IsAsciiDigit(pair.First) && char.IsAsciiDigit(pair.Second)))
        && !string.Equals(left, right, StringComparison.OrdinalIgnoreCase);

    private static int Allowed(int length) => length <= 1 ? 0 : length <= 4 ? 1 : 2;

    /// <summary>Optimal string alignment distance, by three rows of its table.</summary>
    private static int Distance(string left, string right)
    {
        int[] beforeLast = new int[right.Length + 1];
        int[] last = new int[right.Length + 1];
        int[] current = new int[right.Length + 1];
        for (int column = 0; column <= right.Length; column++)
        {
            last[column] = column;
        }

        for (int row = 1; row <= left.Length; row++)
        {
            current[0] = row;
            for (int column = 1; column <= right.Length; column++)
            {
                int change = last[column - 1] + (Same(left[row - 1], right[column - 1]) ? 0 : 1);
                current[column] = Math.Min(change, Math.Min(last[column], current[column - 1]) + 1);
                if (row > 1 && column > 1 && Same(left[row - 1], right[column - 2]) && Same(left[row - 2], right[column - 1]))
                {
                    current[column] = Math.Min(current[column], beforeLast[column - 2] + 1);
                }
            }

            (beforeLast, last, current) = (last, current, beforeLast);
        }

        return last[right.Length];
    }

    private static bool Same(char left, char right) => char.ToLowerInvariant(left) == char.ToLowerInvariant(right);
}
