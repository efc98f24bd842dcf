using Sequencer.Simulation.Metadata;

namespace Sequencer.Simulation.Records;

/// <summary>A consent limit beside the last value of its quantity, which is not a number where nothing was measured.</summary>
public sealed record DischargeFinding(DischargeLimit Limit, double Value, string Unit)
{
    public bool HasValue => !double.IsNaN(Value);

    public bool IsOutside => Value < Limit.Minimum || Value > Limit.Maximum;

    public static IEnumerable<DischargeFinding> Of(RunRecord record, SiteMetadata site)
    {
        foreach (DischargeLimit limit in site.DischargeLimits)
        {
            int column = record.Column(limit.Quantity);
            yield return column < 0
                ? new DischargeFinding(limit, double.NaN, "")
                : new DischargeFinding(limit, record.Table.Value(record.Table.Rows - 1, column), record.Columns[column].Unit);
        }
    }
}
