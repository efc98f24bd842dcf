namespace Sequencer.Text.Tests;

public sealed class NearestWordTests
{
    [Theory]
    [InlineData("limt", "limit")]
    [InlineData("LIMIT", "limit")]
    [InlineData("stpe", "step")]
    [InlineData("stup", null)]
    [InlineData("xyz", null)]
    [InlineData("", null)]
    [InlineData("r", null)]
    public void The_one_near_word_is_found(string word, string? expected) =>
        Assert.Equal(expected, NearestWord.Find(word, ["limit", "step", "stop", "run"]));
}
