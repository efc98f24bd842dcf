using CsCheck;
using Sequencer.Plant.Yaml;
using Sequencer.Testing;
using Sequencer.Text;

namespace Sequencer.Plant.Tests.Yaml;

public sealed class YamlReaderTests
{
    private static (YamlMapping? Root, DiagnosticBag Diagnostics) Read(string text)
    {
        DiagnosticBag diagnostics = new();
        return (YamlReader.Read(new SourceText("plant.yaml", text), diagnostics), diagnostics);
    }

    private static string Codes(DiagnosticBag diagnostics) =>
        string.Join(' ', diagnostics.InOrder().Select(diagnostic => diagnostic.Code));

    [Fact]
    public void Each_scalar_keeps_the_letters_it_was_written_with()
    {
        const string Text = "\uFEFFé: \"a b\"\r\nlist: [1, 𝛼 x]\nnext:\n  - 'q'\ndeep: {x: [[{y: 1}]]}\n";
        (YamlMapping? root, DiagnosticBag diagnostics) = Read(Text);
        Assert.Empty(diagnostics.InOrder());
        Assert.NotNull(root);
        YamlSequence list = Assert.IsType<YamlSequence>(root.Find("list")?.Value);
        Assert.Equal("é", root.Entries[0].Key.Span.Text.ToString());
        Assert.Equal("\"a b\"", root.Entries[0].Value.Span.Text.ToString());
        Assert.Equal("𝛼 x", list.Items[1].Span.Text.ToString());
        Assert.Equal("[1, 𝛼 x]", list.Span.Text.ToString());
        YamlMapping deep = Assert.IsType<YamlMapping>(root.Find("deep")?.Value);
        Assert.Equal("{x: [[{y: 1}]]}", deep.Span.Text.ToString());
        Assert.Equal("[[{y: 1}]]", deep.Entries[0].Value.Span.Text.ToString());
        Assert.Equal("- 'q'", root.Find("next")?.Value.Span.Text.ToString());
    }

    [Theory]
    [InlineData("a: [1, 2", "SEQ0801")]
    [InlineData("a: 1\n b: 2", "SEQ0801")]
    [InlineData("a: &x 1\nb: *x", "SEQ0803 SEQ0803")]
    [InlineData("a: !!str 1\nb: !mine 2", "SEQ0803 SEQ0803")]
    [InlineData("<<: {b: 1}", "SEQ0803")]
    [InlineData("a: 1\na: 2\na: 3", "SEQ0804 SEQ0804")]
    [InlineData("? [1]\n: 2", "SEQ0807")]
    [InlineData("", "SEQ0812")]
    [InlineData("- 1", "SEQ0812")]
    [InlineData("a: 1\n---\nb: 2", "SEQ0812")]
    public void Each_generic_mistake_has_its_code(string text, string codes)
    {
        (_, DiagnosticBag diagnostics) = Read(text);
        Assert.Equal(codes, Codes(diagnostics));
    }

    [Fact]
    public void Files_past_a_limit_are_reported_and_not_read()
    {
        Assert.Equal("SEQ0802", Codes(Read("a: " + new string('x', YamlLimits.Characters)).Diagnostics));
        Assert.Equal("SEQ0802", Codes(Read("a: " + new string('[', 500_000)).Diagnostics));
        string many = "a: [" + string.Concat(Enumerable.Repeat("1,", YamlLimits.Nodes + 1)) + "1]";
        Assert.Equal("SEQ0802", Codes(Read(many).Diagnostics));
    }

    [Fact]
    public void Any_text_is_read_or_reported_and_never_throws() =>
        Gen.String[Gen.Char["ab:-?[]{}&*!|>'\"%@`# \n\t,0<\u2028\u0085\uFEFF"], 0, 40].SampleRepeatably(
            text =>
            {
                (YamlMapping? root, DiagnosticBag diagnostics) = Read(text);
                Assert.True(root is not null || diagnostics.HasErrors);
                DiagnosticRenderer.Render(diagnostics.InOrder());
            },
            iterations: 20_000);
}
