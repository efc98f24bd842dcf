using System.Collections.Frozen;
using System.Collections.Immutable;
using Sequencer.Language.Parsing;

namespace Sequencer.Language.Formatting;

/// <summary>
/// Where the columns of a declaration begin: behind the name, at and behind a text, and at the words listed here.
/// The clauses that end some declarations are set off from each other, but stand in no column: they are too unlike.
/// A statement that is not listed has the columns that its name and its texts give.
/// </summary>
internal static class DeclarationColumns
{
    private static readonly FrozenDictionary<string, string[]> ColumnWords = new Dictionary<string, string[]>(StringComparer.Ordinal)
    {
        ["input"] = ["at"],
        ["output"] = ["at", "safe"],
        ["parameter"] = ["from"],
        ["interlock"] = ["blocked", "exclusive"],
        ["permissive"] = ["starts", "start"],
    }.ToFrozenDictionary(StringComparer.Ordinal);

    private static readonly FrozenDictionary<string, string[]> ClauseWords = new Dictionary<string, string[]>(StringComparer.Ordinal)
    {
        ["input"] = ["bad", "usable", "on", "off"],
        ["output"] = ["emergency", "held", "driven", "de-energised", "confirm", "delivers", "rate"],
        ["reagent"] = ["raises", "lowers", "opposes"],
        ["latch"] = ["clear", "retained"],
    }.ToFrozenDictionary(StringComparer.Ordinal);

    /// <summary>The first line of a statement, up to a token, cut into columns, each cut into clauses, each from one token to another.</summary>
    public static ImmutableArray<ImmutableArray<(int From, int To)>> Of(ImmutableArray<Token> tokens, int end)
    {
        HashSet<string> columnWords = [.. ColumnWords.GetValueOrDefault(tokens[0].Text, [])];
        HashSet<string> clauseWords = [.. ClauseWords.GetValueOrDefault(tokens[0].Text, [])];
        List<ImmutableArray<(int From, int To)>> columns = [];
        List<(int From, int To)> clauses = [];
        int depth = 0;
        int from = 0;
        for (int index = 1; index < end; index++)
        {
            Token token = tokens[index];
            depth += token.Text == "(" ? 1 : token.Text == ")" ? -1 : 0;
            bool canBegin = depth == 0 && token.Kind == TokenKind.Word && tokens[index - 1].Text is not ("else" or "then");
            bool beginsClause = canBegin && clauseWords.Remove(token.Text);
            bool beginsColumn = (canBegin && columnWords.Remove(token.Text)) || IsBehindName(tokens, index) || (depth == 0 && BeginsOrFollowsText(tokens, index));
            if (!beginsClause && !beginsColumn)
            {
                continue;
            }

            clauses.Add((from, index));
            from = index;
            if (beginsColumn)
            {
                columns.Add([.. clauses]);
                clauses.Clear();
            }
        }

        clauses.Add((from, end));
        columns.Add([.. clauses]);
        return [.. columns];
    }

    private static bool IsBehindName(ImmutableArray<Token> tokens, int index) => index == 2 && tokens[index].Kind != TokenKind.Text && tokens[index].Text is not ("(" or "is");

    private static bool BeginsOrFollowsText(ImmutableArray<Token> tokens, int index)
    {
        int before = tokens[index - 1].Text == "," ? index - 2 : index - 1;
        return (index > 2 && IsText(tokens, index)) || (IsText(tokens, before) && tokens[index].Text != ",");
    }

    /// <summary>A text of its own; an answer belongs to the condition it stands in.</summary>
    private static bool IsText(ImmutableArray<Token> tokens, int index) =>
        tokens[index].Kind == TokenKind.Text && tokens[index - 1].Text != "answered";
}
