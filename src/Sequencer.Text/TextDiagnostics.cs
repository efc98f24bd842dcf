using System.Globalization;

namespace Sequencer.Text;

/// <summary>What can be wrong with a file before anything is read from it: SEQ0101 and SEQ0102.</summary>
public static class TextDiagnostics
{
    public static Diagnostic FileTooLarge(SourceSpan span, long size, long limit) => new(
        "SEQ0101",
        Severity.Error,
        span,
        string.Create(CultureInfo.InvariantCulture, $"the file has {size} bytes, more than the {limit} allowed"),
        "a file of that size is damaged, generated wrongly, or no text for a plant at all",
        "check that this is the right file; split a program that is really that large into units");

    public static Diagnostic NotUtf8(SourceSpan span, int offset) => new(
        "SEQ0102",
        Severity.Error,
        span,
        string.Create(CultureInfo.InvariantCulture, $"the file is not UTF-8 (byte {offset})"),
        "words and messages would be read otherwise than they were written",
        "save the file as UTF-8 in the editor");
}
