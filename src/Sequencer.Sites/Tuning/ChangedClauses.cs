using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;
using Sequencer.Text;

namespace Sequencer.Sites.Tuning;

/// <summary>Proposals as changed lines of the programs, in the form that <c>patch</c> and version control take; nothing is changed by us.</summary>
internal sealed class ChangedClauses
{
    private readonly SortedDictionary<(string File, int Line), (string Old, string New)> _lines = [];

    public bool IsEmpty => _lines.Count == 0;

    /// <summary>False where the words do not stand in the clause, as where a module takes them as an argument.</summary>
    public bool Put(DoseTrend trend, DoseProposal proposal, string root)
    {
        (SourceSpan span, string pattern, string with) = proposal.Setting switch
        {
            "wait" => (trend.Dose.Span, $@"(then wait ){Regex.Escape(proposal.Now)}(?![\w.])", proposal.Proposed),
            "pulse" => (trend.Dose.Span, $@"( pulse ){Regex.Escape(proposal.Now)}(?![\w.])", proposal.Proposed),
            "fine pulse" => (trend.Dose.Span, $@"(, ){Regex.Escape(proposal.Now)}(?= within )", proposal.Proposed),
            "no response" => (trend.Dose.Span, @"( no )[0-9.]+ \S+ in [0-9]+ pulses", proposal.Proposed),
            _ => (trend.Step.Limit.Span, $@"(limit ){Regex.Escape(proposal.Now)}(?![\w.])", proposal.Proposed),
        };
        SourceText source = span.Source;
        int first = span.Start.Line;
        int last = source.At(span.Span.End - 1, 0).Start.Line;
        for (int line = first; line <= last; line++)
        {
            (string File, int Line) key = (source.Path.StartsWith(root, StringComparison.Ordinal) ? source.Path[root.Length..] : source.Path, line);
            string old = source.Line(line).ToString().TrimEnd('\r', '\n');
            string text = _lines.TryGetValue(key, out (string Old, string New) before) ? before.New : old;
            string changed = Regex.Replace(text, pattern, match => match.Groups[1].Value + with);
            if (changed != text)
            {
                _lines[key] = (old, changed);
                return true;
            }
        }

        return false;
    }

    public override string ToString()
    {
        StringBuilder text = new();
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
