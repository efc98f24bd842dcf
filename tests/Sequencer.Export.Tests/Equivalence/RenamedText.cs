using System.Text.RegularExpressions;
using Sequencer.Export.Writing;

namespace Sequencer.Export.Tests.Equivalence;

/// <summary>
/// Exported text without its comments and its layout, in which every identifier of the text has another name; words and
/// standard names of IEC 61131-3 stay. The map tells which stands for which.
/// </summary>
internal sealed partial class RenamedText
{
    /// <summary>Reserved words, elementary types, standard blocks with their parameters and standard functions, as far as we write them; from memory.</summary>
    private static readonly HashSet<string> Standard = new(
        """
        TYPE END_TYPE FUNCTION END_FUNCTION FUNCTION_BLOCK END_FUNCTION_BLOCK PROGRAM END_PROGRAM CONFIGURATION END_CONFIGURATION RESOURCE END_RESOURCE TASK WITH ON
        VAR VAR_INPUT VAR_OUTPUT VAR_TEMP VAR_EXTERNAL VAR_GLOBAL END_VAR RETAIN CONSTANT AT IF THEN ELSIF ELSE END_IF CASE OF END_CASE
        AND OR XOR NOT MOD TRUE FALSE BOOL INT DINT UINT UDINT TIME WORD TON TOF TP IN PT Q ET LIMIT MIN MAX SEL ABS T INTERVAL PRIORITY
        """.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries), StringComparer.OrdinalIgnoreCase);

    private readonly Dictionary<string, string> _map = new(StringComparer.OrdinalIgnoreCase);

    public RenamedText(string text)
    {
        string bare = Blank().Replace(Comment().Replace(text, " "), " ");
        Text = Word().Replace(bare, match => Image(match.Value)).Replace("; ", ";\n", StringComparison.Ordinal);
    }

    public string Text { get; }

    /// <summary>The block with the names that the map gives.</summary>
    public ExportedBlock Renamed(ExportedBlock block) => block with
    {
        FunctionBlock = Path(block.FunctionBlock),
        Variables = [.. block.Variables.Select(variable => variable with { Name = Path(variable.Name) })],
        Copies = [.. block.Copies.Select(variable => variable with { Name = Path(variable.Name) })],
        Steps = [.. block.Steps.Select(step => step with { Branch = Path(step.Branch), Copy = Path(step.Copy) })],
    };

    private string Path(string name) => string.Join('.', name.Split('.').Select(part => _map.GetValueOrDefault(part, part)));

    private string Image(string word)
    {
        if (Standard.Contains(word) || word.Contains("_TO_", StringComparison.OrdinalIgnoreCase))
        {
            return word;
        }

        if (!_map.TryGetValue(word, out string? image))
        {
            image = FormattableString.Invariant($"n{(_map.Count * 7919) % 100_003}x");
            _map.Add(word, image);
        }

        return image;
    }

    [GeneratedRegex(@"\(\*.*?\*\)", RegexOptions.Singleline)]
    private static partial Regex Comment();

    [GeneratedRegex(@"\s+")]
    private static partial Regex Blank();

    [GeneratedRegex(@"(?<![A-Za-z0-9_%#])[A-Za-z_][A-Za-z0-9_]*")]
    private static partial Regex Word();
}
