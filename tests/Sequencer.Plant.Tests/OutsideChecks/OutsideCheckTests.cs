using Sequencer.Testing;

namespace Sequencer.Plant.Tests.OutsideChecks;

public sealed class OutsideCheckTests
{
    private const string Accept = "ACCEPT_GOLDEN=1 dotnet test tests/Sequencer.Plant.Tests --filter OutsideCheck";

    /// <summary>The page is what the tests say now, and there are at least seventy.</summary>
    [Fact]
    public void The_page_lists_what_is_checked()
    {
        string page = OutsideCheckPage.Text(out int rows);
        string path = RepositoryPath.At("spec", "outside-checks.md");
        if (Environment.GetEnvironmentVariable("ACCEPT_GOLDEN") == "1" && Environment.GetEnvironmentVariable("CI") is null)
        {
            File.WriteAllText(path, page);
        }

        Assert.True(rows >= 70, $"{rows} checks");
        Assert.True(File.Exists(path) && File.ReadAllText(path) == page, $"spec/outside-checks.md is out of date; write it anew with: {Accept}");
    }
}
