namespace Sequencer.Plant.Yaml;

/// <summary>Finds the word the author probably meant.</summary>
internal static class NearestWord
{
    /// <summary>At most this many letters wrong, and no more than a third of the word.</summary>
    private const int MostEdits = 3;
    private const int LongestCompared = 64;

    public static string? Find(string written, IEnumerable<string> known)
    {
        string? best = null;
        int bestDistance = Math.Min(MostEdits, Math.Max(1, written.Length / 3)) + 1;
        foreach (string word in known)
        {
            if (written.Length > LongestCompared || word.Length > LongestCompared)
            {
                continue;
            }

            int distance = Distance(written.ToUpperInvariant(), word.ToUpperInvariant());
            if (distance < bestDistance)
            {
                best = word;
                bestDistance = distance;
            }
        }

        return best;
    }

    /// <summary>Levenshtein's edit distance, one row at a time.</summary>
    private static int Distance(string left, string right)
    {
        int[] row = new int[right.Length + 1];
        for (int column = 0; column <= right.Length; column++)
        {
            row[column] = column;
        }

        for (int line = 1; line <= left.Length; line++)
        {
            int diagonal = row[0];
            row[0] = line;
            for (int column = 1; column <= right.Length; column++)
            {
                int replaced = diagonal + (left[line - 1] == right[column - 1] ? 0 : 1);
                diagonal = row[column];
                row[column] = Math.Min(replaced, 1 + Math.Min(row[column], row[column - 1]));
            }
        }

        return row[right.Length];
    }
}
