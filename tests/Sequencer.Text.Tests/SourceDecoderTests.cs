using System.Text;

namespace Sequencer.Text.Tests;

public sealed class SourceDecoderTests
{
    private const int Limit = 100;

    [Fact]
    public void A_byte_order_mark_is_allowed_and_dropped()
    {
        DecodedText decoded = SourceDecoder.Decode("program.seq", [0xEF, 0xBB, 0xBF, .. "unit \u00e4"u8], Limit);
        Assert.Equal("unit \u00e4", decoded.Text?.Content);
        Assert.Empty(decoded.Diagnostics);
    }

    [Theory]
    [InlineData(new byte[] { 0x61, 0x0A, 0x62, 0xFF }, 2, 2)]
    [InlineData(new byte[] { 0xC3 }, 1, 1)]
    [InlineData(new byte[] { 0x61, 0xED, 0xA0, 0x80 }, 1, 2)]
    [InlineData(new byte[] { 0xC0, 0x80 }, 1, 1)]
    public void Bytes_that_are_no_UTF8_are_told_at_their_place(byte[] bytes, int line, int column)
    {
        DecodedText decoded = SourceDecoder.Decode("program.seq", bytes, Limit);
        Diagnostic only = Assert.Single(decoded.Diagnostics);
        Assert.Null(decoded.Text);
        Assert.Equal("SEQ0102", only.Code);
        Assert.Equal(new LinePosition(line, column), only.Span.Start);
    }

    [Fact]
    public void A_file_beyond_the_limit_is_refused()
    {
        DecodedText decoded = SourceDecoder.Decode("program.seq", Encoding.UTF8.GetBytes(new string('x', Limit + 1)), Limit);
        Assert.Equal("SEQ0101", Assert.Single(decoded.Diagnostics).Code);
        Assert.NotNull(SourceDecoder.Decode("program.seq", Encoding.UTF8.GetBytes(new string('x', Limit)), Limit).Text);
    }
}
