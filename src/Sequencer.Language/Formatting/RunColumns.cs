using System.Collections.Immutable;
using System.Text;
using Sequencer.Language.Parsing;

namespace Sequencer.Language.Formatting;

/// <summary>
/// The widths of the columns that a run of like declarations has in common. A declaration that stands alone has
/// none: its parts are one blank apart.
/// </summary>
internal sealed class RunColumns
{
    /// <summary>A wider part pushes its own line only; else one long condition would tear its neighbours apart.</summary>
    private const int WidestColumn = 60;

    private const string Between = "  ";
    private readonly ImmutableArray<int> _widths;

    /// <param name="lines">The tokens of each declaration, and the one behind the last of its first line.</param>
    public RunColumns(IEnumerable<(ImmutableArray<Token> Tokens, int End)> lines)
    {
        List<int> widths = [];
        foreach ((ImmutableArray<Token> tokens, int end) in lines)
        {
            ImmutableArray<ImmutableArray<(int From, int To)>> columns = DeclarationColumns.Of(tokens, end);
            for (int index = 0; index < columns.Length - 1; index++)
            {
                int width = Text(tokens, columns[index]).Length;
                if (index == widths.Count)
                {
                    widths.Add(0);
                }

                widths[index] = Math.Max(widths[index], width <= WidestColumn ? width : 0);
            }
        }

        _widths = [.. widths];
    }

    public string Lay(ImmutableArray<Token> tokens, int end)
    {
        ImmutableArray<ImmutableArray<(int From, int To)>> columns = DeclarationColumns.Of(tokens, end);
        StringBuilder text = new();
        for (int index = 0; index < columns.Length - 1; index++)
        {
            text.Append(Text(tokens, columns[index]).PadRight(_widths[index])).Append(Between);
        }

        return text.Append(Text(tokens, columns[^1])).ToString();
    }

    /// <summary>The clauses of one column, set off by two blanks where no comma does it.</summary>
    private static string Text(ImmutableArray<Token> tokens, ImmutableArray<(int From, int To)> clauses)
    {
        StringBuilder text = new();
        foreach ((int from, int to) in clauses)
        {
            text.Append(text.Length == 0 ? "" : tokens[from - 1].Text == "," ? " " : Between).Append(TokenSpacing.Join(tokens, from, to));
        }

        return text.ToString();
    }
}
