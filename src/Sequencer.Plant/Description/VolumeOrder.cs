using System.Globalization;
using Sequencer.Plant.Yaml;

namespace Sequencer.Plant.Description;

/// <summary>Volumes of which one must be less than another.</summary>
internal static class VolumeOrder
{
    public static void Check(YamlFields fields, string what, (string Key, double Litres) lower, (string Key, double Litres) higher)
    {
        // A value that was missing or refused stands at its range's low end and has been reported.
        bool areRead = Math.Min(lower.Litres, higher.Litres) > NumberRange.Positive.Low;
        if (areRead && lower.Litres >= higher.Litres)
        {
            fields.Diagnostics.Add(PlantDiagnostics.OutOfOrder(fields.SpanOf(lower.Key), what, Shown(lower), Shown(higher)));
        }
    }

    private static string Shown((string Key, double Litres) value) =>
        string.Create(CultureInfo.InvariantCulture, $"`{value.Key}` ({value.Litres:0.###} L)");
}
