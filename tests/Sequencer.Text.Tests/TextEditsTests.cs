using CsCheck;
using Sequencer.Testing;

namespace Sequencer.Text.Tests;

public sealed class TextEditsTests
{
    private static readonly SourceText Source = new("a.seq", "one two\nthree\n");

    [Fact]
    public void Edits_apply_in_the_order_of_their_places_and_once_each()
    {
        TextEdit late = new(Source.At(8, 5), "3");
        TextEdit early = new(Source.At(0, 3), "1");
        Assert.Equal("1 two\n3\n", TextEdits.Apply(Source.Content, [late, early, late]));
    }

    [Fact]
    public void Line_ends_of_the_file_stay_and_new_ones_are_like_them() =>
        Assert.Equal("zero\r\none 2\r\nthree\r", TextEdits.Apply("one two\r\nthree\r", [new TextEdit(Source.At(0, 0), "zero\n"), new TextEdit(Source.At(4, 3), "2")]));

    [Fact]
    public void Edits_that_touch_the_same_words_are_refused()
    {
        Assert.Null(TextEdits.Apply(Source.Content, [new TextEdit(Source.At(0, 5), "x"), new TextEdit(Source.At(4, 3), "y")]));
        Assert.Null(TextEdits.Apply(Source.Content, [new TextEdit(Source.At(4, 0), "x"), new TextEdit(Source.At(4, 0), "y")]));
    }

    [Fact]
    public void A_file_that_has_changed_is_refused() => Assert.Null(TextEdits.Apply("one two\nthree!\n", [new TextEdit(Source.At(0, 3), "1")]));

    [Fact]
    public void One_edit_is_what_cutting_and_joining_gives() =>
        Gen.Select(Gen.Int[0, 14], Gen.Int[0, 14], Gen.String[Gen.Char["abc "], 0, 5]).SampleRepeatably(
            (first, second, text) =>
            {
                int start = Math.Min(first, second);
                int end = Math.Max(first, second);
                Assert.Equal(Source.Content[..start] + text + Source.Content[end..], TextEdits.Apply(Source.Content, [new TextEdit(Source.At(start, end - start), text)]));
            },
            iterations: 100);

    [Theory]
    [InlineData("a\n  go 20 -- why\nb\n", "a\n  -- why\nb\n")]
    [InlineData("a\n  go 20  \nb\n", "a\nb\n")]
    [InlineData("go 20", "")]
    public void A_statement_goes_with_its_line_where_nothing_else_stands_there(string content, string expected)
    {
        SourceText source = new("a.seq", content);
        Fix fix = Fix.DeleteStatement(source.At(content.IndexOf("go", StringComparison.Ordinal), 5)) ?? throw new InvalidOperationException("no fix");
        Assert.Equal(expected, TextEdits.Apply(content, fix.Edits));
    }

    [Fact]
    public void A_statement_with_a_comment_inside_is_left()
    {
        SourceText source = new("a.seq", "go 20 -- why\n when A");
        Assert.Null(Fix.DeleteStatement(source.Whole));
    }
}
