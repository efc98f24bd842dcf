using System.Text;

namespace Sequencer.Text;

/// <summary>Bytes to text: strict UTF-8, a byte order mark allowed, bounded in size.</summary>
public static class SourceDecoder
{
    private static readonly UTF8Encoding Strict = new(false, true);

    /// <param name="path">The path that messages show.</param>
    /// <param name="bytes">The file.</param>
    /// <param name="maximumBytes">Larger files are refused without being decoded.</param>
    public static DecodedText Decode(string path, ReadOnlySpan<byte> bytes, int maximumBytes)
    {
        if (bytes.Length > maximumBytes)
        {
            return new DecodedText(null, [TextDiagnostics.FileTooLarge(new SourceText(path, string.Empty).Whole, bytes.Length, maximumBytes)]);
        }

        ReadOnlySpan<byte> content = bytes.StartsWith(Encoding.UTF8.Preamble) ? bytes[Encoding.UTF8.Preamble.Length..] : bytes;
        try
        {
            return new DecodedText(new SourceText(path, Strict.GetString(content)), []);
        }
        catch (DecoderFallbackException failure)
        {
            return NotUtf8(path, content, failure.Index, bytes.Length - content.Length);
        }
    }

    /// <summary>The place is shown in the text before it, which is sound.</summary>
    private static DecodedText NotUtf8(string path, ReadOnlySpan<byte> content, int index, int preamble)
    {
        SourceText sound = new(path, Encoding.UTF8.GetString(content[..Math.Clamp(index, 0, content.Length)]) + "\uFFFD");
        return new DecodedText(null, [TextDiagnostics.NotUtf8(sound.At(sound.Content.Length - 1, 1), preamble + index)]);
    }
}
