namespace Sequencer.Text.Tests;

public sealed class NearestWordTests
{
    [Theory]
    [InlineData("LT11", "LT101", "LT101 AT101")]
    [InlineData("lt101", "LT101", "LT101 LT102")]
    [InlineData("P305", null, "P303 P404")]
    [InlineData("P30", null, "P303 P304")]
    [InlineData("stpo", "stop", "stop step")]
    [InlineData("stap", null, "stop step")]
    [InlineData("opne", "open", "open run stop")]
    [InlineData("XV9", null, "XV1")]
    [InlineData("something", null, "open run")]
    public void Only_a_single_look_alike_is_put_there_without_asking(string word, string? expected, string candidates) =>
        Assert.Equal(expected, NearestWord.Only(word, candidates.Split(' ')));

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
