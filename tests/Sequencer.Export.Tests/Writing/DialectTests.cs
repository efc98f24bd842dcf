using System.Text.RegularExpressions;
using Sequencer.Control.TransitionSystems;
using Sequencer.Export.Equivalence;
using Sequencer.Export.Tests.Equivalence;
using Sequencer.Export.Writing;
using Sequencer.Language.Programs;
using Sequencer.Lowering;
using Sequencer.Proof;
using Sequencer.Testing;
using Sequencer.Text;

namespace Sequencer.Export.Tests.Writing;

/// <summary>The forms of the text where IEC 61131-3 leaves a choice: each says so, is read and is proved equal.</summary>
public sealed partial class DialectTests
{
    private static readonly TextDialect Integers = TextDialect.Default with { States = StateForm.Integer };

    public static TheoryData<TextEdition, StateForm, int?> Dialects => new()
    {
        { TextEdition.Second, StateForm.Enumerated, null },
        { TextEdition.Third, StateForm.Integer, null },
        { TextEdition.Second, StateForm.Integer, 20 },
    };

    [Theory]
    [MemberData(nameof(Dialects))]
    public void The_text_of_one_unit_is_proved_equal(TextEdition edition, StateForm states, int? longestName)
    {
        DemoExport site = new("one-pit", "pit.seq", new TextDialect(edition, states, longestName));
        Assert.IsType<ProvedEqual>(site.Decide(site.Export.Text, ProofOptions.Default));
        Assert.Equal(states == StateForm.Integer, !site.Export.Text.Contains("TYPE\n", StringComparison.Ordinal));
        Assert.True(longestName is not { } most || Names(site.Export.Text).All(name => name.Length <= most));
    }

    [Theory]
    [MemberData(nameof(Dialects))]
    public void The_text_of_two_units_is_proved_equal(TextEdition edition, StateForm states, int? longestName)
    {
        SiteProgram site = SiteExport.Site(SiteExport.First, SiteExport.Second);
        TransitionSystem system = SiteLowering.Lower(site);
        StructuredTextExport export = SiteExport.Of(new TextDialect(edition, states, longestName), SiteExport.First, SiteExport.Second);
        ReadBackResult read = ReadBack.Run(system, export, 2_000, 1, CancellationToken.None);
        Assert.True(read.Agrees, read.Difference?.ToString() ?? DiagnosticRenderer.Render(read.Diagnostics));
        Assert.All(TextEquality.DecideAll(system, export, read.Systems, ProofOptions.Default, CancellationToken.None), result => Assert.IsType<ProvedEqual>(result));
    }

    /// <summary>A step that is another in one place of the text: the relation of steps to numbers does not hide it.</summary>
    [Fact]
    public void A_wrong_number_of_a_step_is_not_called_equal()
    {
        DemoExport site = new("one-pit", "pit.seq", Integers);
        Match step = StepConstant().Matches(site.Export.Text)[1];
        string other = site.Export.Text.Remove(step.Groups[1].Index, step.Groups[1].Length).Insert(step.Groups[1].Index, "1");
        Assert.IsNotType<ProvedEqual>(site.Decide(other, ProofOptions.Default with { Conflicts = 1_000 }));
    }

    [Fact]
    public void Labels_are_constants_in_the_third_edition_and_numbers_in_the_second()
    {
        string third = new DemoExport("one-pit", "pit.seq", Integers).Export.Text;
        string second = new DemoExport("one-pit", "pit.seq", Integers with { Edition = TextEdition.Second }).Export.Text;
        Assert.Contains("\n    STATE_RUNNING, STATE_HOLDING, STATE_RESTARTING: State_At_Start := STATE_HELD;", third, StringComparison.Ordinal);
        Assert.Contains(
            "\n    1 (* STATE_RUNNING *), 3 (* STATE_HOLDING *), 5 (* STATE_RESTARTING *): State_At_Start := STATE_HELD;", second, StringComparison.Ordinal);
        Assert.DoesNotMatch(NamedLabel(), second);
    }

    /// <summary>One VAR_GLOBAL in a configuration: the second edition's grammar, from memory.</summary>
    [Fact]
    public void A_configuration_of_the_second_edition_has_one_list_of_globals()
    {
        string second = SiteExport.Of(TextDialect.Default with { Edition = TextEdition.Second }, SiteExport.First, SiteExport.Second).Text;
        Assert.Single(GlobalSection().Matches(second));
        Assert.Equal(2, GlobalSection().Count(SiteExport.Of(SiteExport.First, SiteExport.Second)));
    }

    [Fact]
    public void The_head_says_what_was_asked_for_and_lists_short_names()
    {
        string text = new DemoExport("one-pit", "pit.seq", new TextDialect(TextEdition.Second, StateForm.Integer, 20)).Export.Text;
        GoldenFile.Matches(text[..text.IndexOf("(* ====", StringComparison.Ordinal)], "dialect-head.verified.txt");
        Assert.DoesNotContain("as asked for", SiteExport.Of(SiteExport.First, SiteExport.Second), StringComparison.Ordinal);
    }

    [Fact]
    public void A_short_name_stands_for_one_name_and_an_edit_elsewhere_leaves_it()
    {
        TextDialect dialect = TextDialect.Default with { LongestName = 20 };
        string program = File.ReadAllText(RepositoryPath.Site("one-pit", "pit.seq"));
        string edited = program.Replace("step 10 \"", "step 10 \"Slowly: ", StringComparison.Ordinal).Replace("P320A", "P320C", StringComparison.Ordinal);
        Dictionary<string, string> before = Table(new DemoExport("one-pit", new SourceText("pit.seq", program), dialect).Export.Text);
        Dictionary<string, string> after = Table(new DemoExport("one-pit", new SourceText("pit.seq", edited), dialect).Export.Text);
        Assert.True(before.Count > 20);
        Assert.Equal(before.Count, before.Values.Distinct(StringComparer.OrdinalIgnoreCase).Count());
        string[] both = [.. before.Keys.Intersect(after.Keys)];
        Assert.InRange(both.Length, before.Count / 2, before.Count - 1);
        Assert.All(both, name => Assert.Equal(before[name], after[name]));
    }

    /// <summary>What stood one below the other does so with short names.</summary>
    [Fact]
    public void Declarations_stay_in_columns()
    {
        string text = new DemoExport("one-pit", "pit.seq", TextDialect.Default with { LongestName = 20 }).Export.Text;
        string section = text[text.IndexOf("VAR RETAIN\n", StringComparison.Ordinal)..];
        int[] columns = [.. section[..section.IndexOf("END_VAR", StringComparison.Ordinal)].Split('\n')[1..^1].Select(line => line.IndexOf(" : ", StringComparison.Ordinal))];
        Assert.Single(columns.Distinct());
        Assert.InRange(columns[0], 10, 22);
    }

    private static IEnumerable<string> Names(string text) =>
        Word().Matches(Comment().Replace(text, " ")).Select(match => match.Value);

    private static Dictionary<string, string> Table(string text) =>
        Row().Matches(text).ToDictionary(match => match.Groups[2].Value, match => match.Groups[1].Value);

    [GeneratedRegex(@"\(\*.*?\*\)", RegexOptions.Singleline)]
    private static partial Regex Comment();

    [GeneratedRegex(@"[A-Za-z_]\w*")]
    private static partial Regex Word();

    [GeneratedRegex(@"^\(\*   (\w+) +(\w+) \*\)$", RegexOptions.Multiline)]
    private static partial Regex Row();

    [GeneratedRegex(@"^ +\w+_S\d+_\w+ +: INT := (\d+);", RegexOptions.Multiline)]
    private static partial Regex StepConstant();

    [GeneratedRegex(@"^ +\w+:(?!=)", RegexOptions.Multiline)]
    private static partial Regex NamedLabel();

    [GeneratedRegex(@"^ *VAR_GLOBAL$", RegexOptions.Multiline)]
    private static partial Regex GlobalSection();
}
