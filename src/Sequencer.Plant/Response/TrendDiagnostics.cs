using System.Globalization;
using Sequencer.Text;

namespace Sequencer.Plant.Response;

/// <summary>The mistakes that a recorded trend can hold: SEQ0860 to SEQ0862.</summary>
public static class TrendDiagnostics
{
    public static Diagnostic NoTime(SourceSpan span, string found) => Error(
        "SEQ0860",
        span,
        $"the first column is `{found}`, not the time",
        "without times nothing can be said of how fast the plant answers",
        "begin the head with `time s`, `time min` or `time h`, the columns apart by commas");

    public static Diagnostic RowOfOtherLength(SourceSpan span, int cells, int columns) => Error(
        "SEQ0861",
        span,
        string.Create(CultureInfo.InvariantCulture, $"this row has {cells} cells, but the head has {columns}"),
        "a cell more or less moves all values behind it into the wrong column; a comma for the decimals does that too",
        "write each row with as many cells as the head, numbers with a full stop");

    public static Diagnostic TimeDoesNotGrow(SourceSpan span, string found) => Error(
        "SEQ0862",
        span,
        $"the time `{found}` is not later than the one before",
        "rows are what was so at one time after another",
        "write times as numbers that grow, without date; leave out rows that were recorded twice");

    private static Diagnostic Error(string code, SourceSpan span, string message, string reason, string mend) =>
        new(code, Severity.Error, span, message, reason, mend);
}
