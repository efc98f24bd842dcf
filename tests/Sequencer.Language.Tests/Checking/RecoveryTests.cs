using System.Collections.Immutable;
using CsCheck;
using Sequencer.Language.Binding;
using Sequencer.Language.Checking;
using Sequencer.Language.Parsing;
using Sequencer.Language.Programs;
using Sequencer.Testing;
using Sequencer.Text;

namespace Sequencer.Language.Tests.Checking;

public sealed class RecoveryTests
{
    private const int Scan = 100;
    private static readonly ImmutableArray<string> Lines = [.. SamplePrograms.Full.Split('\n')];

    /// <summary>Ways to spoil a line beyond reading.</summary>
    private static readonly ImmutableArray<Func<string, string>> Breaks =
    [
        line => "zzz " + line.TrimStart()[(line.TrimStart().IndexOf(' ', StringComparison.Ordinal) + 1)..],
        line => line + " ?",
        line => line + " \"open",
        line => line + " (",
        line => line + " )",
    ];

    [Fact]
    public void Broken_lines_anywhere_give_one_diagnostic_each_and_no_others()
    {
        ParseCache cache = new();
        Gen.Select(Gen.Int[0, Lines.Length - 1], Gen.Int[0, Breaks.Length - 1]).Array[1, 5].SampleRepeatably(
            chosen =>
            {
                SortedSet<int> broken = [];
                string[] lines = [.. Lines];
                foreach ((int line, int way) in chosen.Where(pair => MayBreak(pair.Item1)))
                {
                    if (!broken.Contains(line) && !broken.Contains(line - 1) && !broken.Contains(line + 1))
                    {
                        lines[line] = Breaks[way](lines[line]);
                        broken.Add(line);
                    }
                }

                ImmutableArray<Diagnostic> found = ProgramChecker.Check(SamplePrograms.Source(string.Join('\n', lines)), Scan, cache).Diagnostics;
                ImmutableArray<int> told = [.. found.Where(IsOurs).Select(diagnostic => diagnostic.Span.Start.Line - 1)];
                Assert.True(told.SequenceEqual(broken), $"broken {string.Join(',', broken)}\n{DiagnosticRenderer.Render(found)}");
            },
            iterations: 150);
    }

    [Fact]
    public void Lines_beside_a_broken_one_still_bind()
    {
        UnitProgram whole = Bind(SamplePrograms.Full);
        UnitProgram rest = Bind(SamplePrograms.Full
            .Replace("alarm A1", "alarm", StringComparison.Ordinal)
            .Replace("stop P1", "stop stop", StringComparison.Ordinal)
            .Replace("go finish when LT1", "go finnish when LT1", StringComparison.Ordinal));
        Assert.Empty(rest.Alarms);
        Assert.Equal(whole.Outputs.Length, rest.Outputs.Length);
        Assert.Equal(whole.Requirements.Length, rest.Requirements.Length);
        Assert.Equal(whole.Steps.Length, rest.Steps.Length);
        Assert.Equal(whole.Steps[0].Actions.Length - 1, rest.Steps[0].Actions.Length);
        Assert.Equal(whole.Transitions.Length - 1, rest.Transitions.Length);
    }

    [Fact]
    public void An_open_bracket_does_not_swallow_the_statements_below_it()
    {
        ParsedProgram parsed = ProgramParser.Parse(SamplePrograms.Source("alarm A1 \"x\" when (YS1 and\n\nstep 10 \"Fill\"\nstop P1"), new ParseCache(), new DiagnosticBag());
        Assert.Equal(3, parsed.Statements.Length);
    }

    [Fact]
    public void A_line_goes_on_inside_brackets_and_after_a_comma_or_a_joining_word()
    {
        const string text = "alarm A1 \"x\" when (YS1\n  -- why\n  stays 2 s) and\n\n  not\n  XV1 open\ntrip T1 \"x\" when YS1 then\n  stop,\n  if bad\nprocedure";
        ParsedProgram parsed = ProgramParser.Parse(SamplePrograms.Source(text), new ParseCache(), new DiagnosticBag());
        Assert.Equal(["AlarmSyntax", "MalformedLine", "ProcedureSyntax"], parsed.Statements.Select(statement => statement.Statement.GetType().Name));
    }

    private static UnitProgram Bind(string text)
    {
        DiagnosticBag diagnostics = new();
        ProgramBinder binder = new(ProgramParser.Parse(SamplePrograms.Source(text), new ParseCache(), diagnostics), Scan, new SiteNames(), diagnostics);
        binder.Declare();
        return binder.Bind();
    }

    /// <summary>A line of its own: no comment, and neither half of the one statement on two lines.</summary>
    private static bool MayBreak(int line) =>
        !Lines[line].TrimStart().StartsWith("--", StringComparison.Ordinal) && !Lines[line].EndsWith(',') && !(line > 0 && Lines[line - 1].EndsWith(','));

    private static bool IsOurs(Diagnostic diagnostic) => string.CompareOrdinal(diagnostic.Code, "SEQ0400") < 0;
}
