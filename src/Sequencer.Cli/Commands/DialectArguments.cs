using System.CommandLine;
using System.Globalization;
using Sequencer.Sites;

namespace Sequencer.Cli.Commands;

/// <summary>Options of the commands that write structured text: what the standard leaves open.</summary>
internal sealed class DialectArguments
{
    private const string Third = "third";
    private const string Second = "second";
    private const string Enumerated = "enumerated";
    private const string Integer = "integer";

    private readonly Option<string?> _edition = Choice(
        "--edition", "the edition of IEC 61131-3 that the text keeps to; third where nothing is said", Third, Second);

    private readonly Option<string?> _states = Choice(
        "--states", "states and steps as values of enumerated types, or as integer constants; enumerated where nothing is said", Enumerated, Integer);

    private readonly Option<string?> _longestName = new("--longest-name")
    {
        Description = "shorten names of more letters than this; the text begins with a table of them",
        HelpName = "LETTERS",
    };

    public DialectArguments() => _longestName.Validators.Add(result =>
    {
        if (result.Tokens.Count == 1 && Letters(result.Tokens[0].Value) is null)
        {
            result.AddError($"--longest-name: `{result.Tokens[0].Value}` is no number of letters; write a whole number above 0, as 32");
        }
    });

    public Option<bool> Exchange { get; } = new("--exchange")
    {
        Description = "also write the text as an exchange file, SITE.xml, in the form of IEC 61131-10 as far as it is known here",
    };

    public IEnumerable<Option> All => [_edition, _states, _longestName, Exchange];

    public ExportSettings Settings(ParseResult parsed) => new()
    {
        SecondEdition = parsed.GetValue(_edition) == Second,
        IntegerStates = parsed.GetValue(_states) == Integer,
        Exchange = parsed.GetValue(Exchange),
        LongestName = parsed.GetValue(_longestName) is { } letters ? Letters(letters) : null,
    };

    private static Option<string?> Choice(string name, string description, params string[] values)
    {
        Option<string?> option = new(name) { Description = description, HelpName = string.Join('|', values) };
        option.Validators.Add(result =>
        {
            if (result.Tokens.Count == 1 && !values.Contains(result.Tokens[0].Value, StringComparer.Ordinal))
            {
                result.AddError($"{name}: `{result.Tokens[0].Value}` is not known here; write {string.Join(" or ", values)}");
            }
        });
        return option;
    }

    private static int? Letters(string text) =>
        int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out int letters) && letters > 0 ? letters : null;
}
