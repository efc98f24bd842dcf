using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;
using Sequencer.Language.Units;
using Sequencer.Text;

namespace Sequencer.Sites.Tuning;

/// <summary>
/// Proposals as changed lines of the programs, in the form that <c>patch</c> and version control take, which pass over the words above the first file; nothing is
/// changed by us.
/// </summary>
internal sealed class ChangedClauses
{
    private readonly SortedDictionary<(string File, int Line), (string Old, string New)> _lines = [];
    private readonly List<string> _weaker = [];

    public bool IsEmpty => _lines.Count == 0;

    /// <summary>False where the words do not stand in the clause, as where a module takes them as an argument.</summary>
    public bool Put(DoseTrend trend, DoseProposal proposal, string root)
    {
        (SourceSpan span, string pattern) = proposal.Setting switch
        {
            "wait" => (trend.Dose.Span, $"(then wait ){Spelt(trend.Dose.Wait)}"),
            "pulse" => (trend.Dose.Span, $"( pulse ){Spelt(trend.Dose.Pulse)}"),
            "fine pulse" => (trend.Dose.Span, $"(, ){Spelt(trend.Dose.FinePulse ?? trend.Dose.Pulse)}(?= within )"),
            "no response" => (trend.Dose.Span, @"( no )[0-9.]+ \S+ in [0-9]+ pulses"),
            _ => (trend.Step.Limit.Span, $"(limit ){Spelt(trend.Step.Limit.Time)}"),
        };
        SourceText source = span.Source;
        int first = span.Start.Line;
        int last = source.At(span.Span.End - 1, 0).Start.Line;
        for (int line = first; line <= last; line++)
        {
            (string File, int Line) key = (source.Path.StartsWith(root, StringComparison.Ordinal) ? source.Path[root.Length..] : source.Path, line);
            string old = source.Line(line).ToString().TrimEnd('\r', '\n');
            string text = _lines.TryGetValue(key, out (string Old, string New) before) ? before.New : old;
            string changed = Regex.Replace(text, pattern, match => match.Groups[1].Value + proposal.Proposed);
            if (changed != text)
            {
                _lines[key] = (old, changed);
                if (proposal.Weakens is { } weakens)
                {
                    _weaker.Add(string.Create(CultureInfo.InvariantCulture, $"{key.File}:{line}: {proposal.Setting} {proposal.Now} -> {proposal.Proposed} weakens a protection: {weakens}."));
                }

                return true;
            }
        }

        return false;
    }

    /// <summary>A time in each unit that has it whole: 60 s and 1 min are one.</summary>
    private static string Spelt(Duration time)
    {
        (long Milliseconds, string Unit)[] units = [(1, "ms"), (1_000, "s"), (60_000, "min"), (3_600_000, "h")];
        IEnumerable<string> spelt = units.Where(unit => time.Milliseconds % unit.Milliseconds == 0)
            .Select(unit => string.Create(CultureInfo.InvariantCulture, $@"{time.Milliseconds / unit.Milliseconds}(?:\.0+)? {unit.Unit}"));
        return $@"(?:{string.Join('|', spelt)})(?![\w.])";
    }

    public override string ToString()
    {
        if (IsEmpty)
        {
            return "";
        }

        StringBuilder text = new();
        text.Append("For review: prove the site again (sequencer verify) with these lines before they go into a controller.\n");
        foreach (string weaker in _weaker)
        {
            text.Append(weaker).Append('\n');
        }

        foreach (IGrouping<string, KeyValuePair<(string File, int Line), (string Old, string New)>> file in _lines.GroupBy(line => line.Key.File))
        {
            text.Append(CultureInfo.InvariantCulture, $"--- a/{file.Key}\n+++ b/{file.Key}\n");
            foreach (((_, int line), (string old, string changed)) in file)
            {
                text.Append(CultureInfo.InvariantCulture, $"@@ -{line} +{line} @@\n-{old}\n+{changed}\n");
            }
        }

        return text.ToString();
    }
}
