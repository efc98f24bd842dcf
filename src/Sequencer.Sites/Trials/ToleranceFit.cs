using System.Collections.Immutable;
using System.Globalization;
using Sequencer.Plant.Description;
using Sequencer.Plant.Yaml;
using Sequencer.Text;

namespace Sequencer.Sites.Trials;

/// <summary>From a written tolerance to its two ends; reports SEQ0632, and what any quantity can have wrong.</summary>
internal static class ToleranceFit
{
    /// <summary>Figures of a drawn value: more than any plant is known to.</summary>
    private const string Figures = "G6";

    public static ImmutableArray<Tolerance> Bind(LoadedSite site, ImmutableArray<ToleranceText> written, DiagnosticBag diagnostics)
    {
        YamlMapping? plant = YamlReader.Read(site.PlantText, new DiagnosticBag());
        return plant is null ? [] : [.. written.Select(text => text.Within is null ? Between(text, diagnostics) : Around(text, plant, diagnostics)).OfType<Tolerance>()];
    }

    /// <summary>A value as the plant's description would have it; read again, it is that value.</summary>
    public static (string Text, double Value) Written(double value, string unit)
    {
        decimal rounded = decimal.Parse(value.ToString(Figures, CultureInfo.InvariantCulture), NumberStyles.Float, CultureInfo.InvariantCulture);
        string number = rounded.ToString("0.############################", CultureInfo.InvariantCulture);
        return (unit.Length == 0 ? number : $"{number} {unit}", double.Parse(number, CultureInfo.InvariantCulture));
    }

    private static Tolerance? Between(ToleranceText text, DiagnosticBag diagnostics)
    {
        if (Number(text.Low, diagnostics) is not { } low || Number(text.High, diagnostics) is not { } high || InUnit(high, low.Unit, text.High, diagnostics) is not double top)
        {
            return null;
        }

        if (low.Value >= top)
        {
            diagnostics.Add(PlantDiagnostics.OutOfOrder(text.Low?.Span ?? text.Place.Span, $"tolerance of `{text.Place.Value}`", "`low`", "`high`"));
            return null;
        }

        return new Tolerance(text.Place, low.Value, top, low.Unit, text.Low ?? text.Place);
    }

    private static Tolerance? Around(ToleranceText text, YamlMapping plant, DiagnosticBag diagnostics)
    {
        if (PlantChanges.Find(plant, text.Place.Value) is not string found || Parse(found) is not { } middle)
        {
            diagnostics.Add(TrialDiagnostics.NothingToBeWithin(text.Place.Span, text.Place.Value));
            return null;
        }

        if (Number(text.Within, diagnostics) is not { } within)
        {
            return null;
        }

        double? half = within.Unit == "%" ? Math.Abs(middle.Value) * within.Value / 100.0 : InUnit(within, middle.Unit, text.Within, diagnostics);
        if (half is not double width)
        {
            return null;
        }

        if (width <= 0 && text.Within is { } written)
        {
            diagnostics.Add(YamlDiagnostics.OutOfRange(written.Span, "`within`", written.Value, "above 0"));
            return null;
        }

        return new Tolerance(text.Place, middle.Value - width, middle.Value + width, middle.Unit, text.Within ?? text.Place);
    }

    private static double? InUnit((double Value, string Unit) written, string unit, Placed<string>? place, DiagnosticBag diagnostics)
    {
        if (written.Unit == unit)
        {
            return written.Value;
        }

        if (Unit.Find(written.Unit) is { } from && Unit.Find(unit) is { } to && from.Dimension == to.Dimension)
        {
            return written.Value * from.Scale / to.Scale;
        }

        if (place is not null)
        {
            string fits = Unit.Find(unit) is { } known ? Unit.SymbolsOf(known.Dimension) : "no unit";
            diagnostics.Add(YamlDiagnostics.WrongDimension(place.Span, $"`{place.Value}`", written.Unit, fits));
        }

        return null;
    }

    private static (double Value, string Unit)? Number(Placed<string>? written, DiagnosticBag diagnostics)
    {
        if (written is null)
        {
            return null;
        }

        if (Parse(written.Value) is { } parsed)
        {
            return parsed;
        }

        diagnostics.Add(YamlDiagnostics.WrongKind(written.Span, "a tolerance", "a number with its unit", $"`{written.Value}`"));
        return null;
    }

    private static (double Value, string Unit)? Parse(string text)
    {
        string trimmed = text.Trim();
        int gap = trimmed.IndexOf(' ', StringComparison.Ordinal);
        string number = gap < 0 ? trimmed : trimmed[..gap];
        return double.TryParse(number, NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint | NumberStyles.AllowExponent, CultureInfo.InvariantCulture, out double value) && double.IsFinite(value)
            ? (value, gap < 0 ? "" : trimmed[gap..].Trim())
            : null;
    }
}
