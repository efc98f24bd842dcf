using System.Globalization;
using Sequencer.Plant.Yaml;
using Sequencer.Simulation.Scenarios;
using Sequencer.Text;

namespace Sequencer.Sites.Scenarios;

/// <summary>Reads numbers with units exactly, as decimals; whether a unit fits is known only where the name is bound.</summary>
internal static class MeasureReading
{
    public static Measure? Read(Placed<string>? written, DiagnosticBag diagnostics)
    {
        if (written is null)
        {
            return null;
        }

        string text = written.Value.Trim();
        int gap = text.IndexOf(' ', StringComparison.Ordinal);
        string number = gap < 0 ? text : text[..gap];
        string unit = gap < 0 ? "" : text[gap..].Trim();
        if (!decimal.TryParse(number, NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out decimal value)
            || unit.Contains(' ', StringComparison.Ordinal))
        {
            diagnostics.Add(ScenarioFileDiagnostics.NotAMeasure(written.Span, text));
            return null;
        }

        return new Measure(value, unit);
    }
}
