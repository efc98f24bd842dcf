using System.Collections.Immutable;
using Sequencer.Language.Checking;
using Sequencer.Text;

namespace Sequencer.Language.Tests.Corpus;

public sealed class FaultyProgramTests
{
    private const int ScanMilliseconds = 100;

    public static TheoryData<string> Names => [.. FaultyProgram.All.Select(program => program.Name)];

    [Fact]
    public void The_corpus_holds_at_least_150_faulty_programs_and_no_two_alike()
    {
        Assert.True(FaultyProgram.All.Length >= 150, $"{FaultyProgram.All.Length} faulty programs");
        Assert.Equal(FaultyProgram.All.Length, FaultyProgram.All.Select(program => program.Source.Content).Distinct().Count());
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Its_one_mistake_is_told_where_it_is_and_nothing_else(string name)
    {
        FaultyProgram program = FaultyProgram.All.Single(program => program.Name == name);

        ImmutableArray<Diagnostic> found = ProgramChecker.Check(program.Source, ScanMilliseconds).Diagnostics;

        string told = DiagnosticRenderer.Render(found);
        Assert.True(found.Length == 1, $"one message was expected:\n{told}");
        Assert.True(found[0].Code == program.Code, $"{program.Code} was expected:\n{told}");
        Assert.True(found[0].Span.Span == program.Span, $"{program.Span} was expected, {found[0].Span.Span} was found:\n{told}");
        Assert.True(found[0].Reason.Length > 0 && found[0].Mend.Length > 0, told);
    }
}
