using Sequencer.Language.Checking;
using Sequencer.Text;

namespace Sequencer.Language.Tests.Checking;

public sealed class ProgramCheckerTests
{
    private const int Scan = 100;

    [Fact]
    public void The_whole_program_of_the_language_page_is_clean()
    {
        CheckResult result = ProgramChecker.Check(SamplePrograms.Source(SamplePrograms.Rinse), Scan);
        Assert.Equal(string.Empty, DiagnosticRenderer.Render(result.Diagnostics));
        Assert.NotNull(result.Program);
    }
}
