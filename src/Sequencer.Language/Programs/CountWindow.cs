using Sequencer.Language.Units;
using Sequencer.Text;

namespace Sequencer.Language.Programs;

/// <summary>The last <see cref="Time"/>, in equal parts; the part that is partly older counts whole.</summary>
public sealed record CountWindow(Duration Time, int Parts, SourceSpan Span)
{
    /// <summary>How many scans a part lasts: rounded up, at least one, so that the parts last no less than the time.</summary>
    public long ScansOfAPart(int scanMilliseconds) => Math.Max(1, (Time.Scans(scanMilliseconds) + Parts - 1) / Parts);
}
