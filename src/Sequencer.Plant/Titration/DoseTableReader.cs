using System.Collections.Immutable;
using Sequencer.Plant.Yaml;
using Sequencer.Text;

namespace Sequencer.Plant.Titration;

/// <summary>
/// Reads a titration from comma-separated text: a line for each thing that must be known, then a line with the heads of two columns, then a line for each point. What
/// follows a <c>#</c> is a comment.
/// </summary>
public sealed class DoseTableReader
{
    private const int FewestPoints = 5;
    private const int MostPoints = 2_000;
    private const double StandardProbeError = 0.05;
    private const double StandardVolumeError = 0.02;

    private static readonly NumberRange Ph = new(-1.0, 15.0);
    private static readonly NumberRange Celsius = new(0.0, 60.0);

    private static readonly ImmutableDictionary<string, string> Examples = new Dictionary<string, string>
    {
        ["sample"] = "sample, 500 mL",
        ["temperature"] = "temperature, 20 C",
        ["titrant"] = "titrant, base, 0.1 mol/L",
        ["batch"] = "batch, 10 m3",
        ["reagent"] = "reagent, base, 17.6 mol/L",
        ["setpoint"] = "setpoint, 9.0",
        ["probe_error"] = "probe_error, 0.05",
        ["volume_error"] = "volume_error, 2 %",
    }.ToImmutableDictionary();

    private static readonly ImmutableArray<string> Needed = ["sample", "temperature", "titrant", "batch", "reagent", "setpoint"];

    private readonly SourceText _text;
    private readonly DiagnosticBag _diagnostics;
    private readonly Dictionary<string, SourceSpan> _seen = [];
    private readonly Dictionary<string, double> _values = [];
    private readonly List<Placed<double>> _setpoints = [];
    private readonly List<(double Litres, double Ph)> _points = [];
    private double? _litresOfColumn;

    private DoseTableReader(SourceText text, DiagnosticBag diagnostics)
    {
        _text = text;
        _diagnostics = diagnostics;
    }

    /// <summary>Null, with diagnostics, where the table cannot be used.</summary>
    public static DoseTable? Read(SourceText text, DiagnosticBag diagnostics)
    {
        DiagnosticBag found = new();
        DoseTable? table = new DoseTableReader(text, found).Read();
        diagnostics.AddRange(found.InOrder());
        return found.HasErrors ? null : table;
    }

    private DoseTable? Read()
    {
        for (int line = 1; line <= _text.LineCount; line++)
        {
            YamlScalar[] cells = Cells(line);
            if (cells.Length == 1 && cells[0].Text.Length == 0)
            {
                continue;
            }

            if (_litresOfColumn is { } unit)
            {
                Point(cells, unit);
            }
            else
            {
                Said(cells);
            }
        }

        foreach (string key in Needed.Where(key => !_seen.ContainsKey(key)))
        {
            _diagnostics.Add(TitrationDiagnostics.MissingLine(_text.At(0, 0), key, Examples[key]));
        }

        if (_points.Count < FewestPoints && !_diagnostics.HasErrors)
        {
            _diagnostics.Add(TitrationDiagnostics.TooFewPoints(_text.At(_text.Content.Length, 0), _points.Count, FewestPoints));
        }

        return _diagnostics.HasErrors ? null : Table();
    }

    private DoseTable Table()
    {
        TitrationTable titration = new(_values["sample"], _values["titrant"], _values["temperature"], [.. _points]);
        DoseTable table = new(
            titration,
            _values["batch"],
            _values["reagent"],
            [.. _setpoints],
            _values.GetValueOrDefault("probe_error", StandardProbeError),
            _values.GetValueOrDefault("volume_error", StandardVolumeError));
        foreach (Placed<double> setpoint in _setpoints)
        {
            if (setpoint.Value < table.LowestPh || setpoint.Value > table.HighestPh)
            {
                _diagnostics.Add(TitrationDiagnostics.OutsideTitration(setpoint.Span, setpoint.Value, table.LowestPh, table.HighestPh));
            }
            else if (table.Model.Whole.Dose(setpoint.Value, table.ReagentStrength) < 0)
            {
                _diagnostics.Add(TitrationDiagnostics.WrongWay(setpoint.Span, setpoint.Value, table.ReagentStrength > 0 ? "a base" : "an acid"));
            }
        }

        return table;
    }

    /// <summary>The parts of a line without its comment, each with its place and without the blanks around it.</summary>
    private YamlScalar[] Cells(int line)
    {
        string written = _text.Line(line).ToString().Split('#')[0].TrimEnd('\r', '\n');
        List<YamlScalar> cells = [];
        int start = _text.LineStart(line);
        foreach (string cell in written.Split(','))
        {
            string trimmed = cell.Trim();
            int lead = cell.Length - cell.TrimStart().Length;
            cells.Add(new YamlScalar(_text.At(start + (trimmed.Length == 0 ? 0 : lead), trimmed.Length), trimmed, false));
            start += cell.Length + 1;
        }

        return [.. cells];
    }

    private void Said(YamlScalar[] cells)
    {
        string key = cells[0].Text;
        if (cells.Length == 2 && cells[1].Text == "pH" && key is "mL" or "L")
        {
            _litresOfColumn = key == "L" ? 1.0 : 1e-3;
            return;
        }

        if (!Examples.TryGetValue(key, out string? example))
        {
            _diagnostics.Add(YamlDiagnostics.UnknownKey(cells[0].Span, key, [.. Needed, "probe_error", "volume_error", "mL, pH"]));
            return;
        }

        // Said, although perhaps not understood: it is not missing too.
        bool isFirst = _seen.TryAdd(key, cells[0].Span);
        if (cells.Length != example.Split(',').Length)
        {
            _diagnostics.Add(TitrationDiagnostics.NotUnderstood(cells[0].Span.Cover(cells[^1].Span), $"a line of {cells.Length} parts", $"as `{example}`"));
            return;
        }

        if (key != "setpoint" && !isFirst)
        {
            _diagnostics.Add(YamlDiagnostics.DuplicateKey(cells[0].Span, key, _seen[key]));
            return;
        }

        if (Value(key, cells) is not { } value)
        {
            return;
        }

        if (key == "setpoint")
        {
            _setpoints.Add(new Placed<double>(value, cells[1].Span));
        }
        else
        {
            _values[key] = value;
        }
    }

    private double? Value(string key, YamlScalar[] cells) => key switch
    {
        "sample" or "batch" => ScalarReading.QuantityOf(cells[1], key, Dimension.Volume, NumberRange.Positive, _diagnostics)?.Value,
        "temperature" => ScalarReading.QuantityOf(cells[1], key, Dimension.Temperature, Celsius, _diagnostics)?.Value,
        "volume_error" => ScalarReading.QuantityOf(cells[1], key, Dimension.Fraction, new NumberRange(0.0, 0.5), _diagnostics)?.Value,
        "probe_error" => ScalarReading.Number(cells[1], key, new NumberRange(0.0, 1.0), _diagnostics),
        "setpoint" => ScalarReading.Number(cells[1], key, Ph, _diagnostics),
        _ => Strength(key, cells),
    };

    /// <summary>Equivalents of base in a litre.</summary>
    private double? Strength(string key, YamlScalar[] cells)
    {
        double? strength = ScalarReading.QuantityOf(cells[2], key, Dimension.AmountConcentration, new NumberRange(1e-6, 100.0), _diagnostics)?.Value;
        switch (cells[1].Text)
        {
            case "base":
                return strength;
            case "acid":
                return -strength;
            default:
                _diagnostics.Add(YamlDiagnostics.UnknownWord(cells[1].Span, key, cells[1].Text, ["base", "acid"]));
                return null;
        }
    }

    private void Point(YamlScalar[] cells, double unit)
    {
        if (cells.Length != 2)
        {
            _diagnostics.Add(TitrationDiagnostics.NotUnderstood(cells[0].Span.Cover(cells[^1].Span), $"a point of {cells.Length} parts", "what was added so far and the pH then, as `12.5, 7.31`, with points for decimals"));
            return;
        }

        double? added = ScalarReading.Number(cells[0], "what was added", NumberRange.NotNegative, _diagnostics);
        double? ph = ScalarReading.Number(cells[1], "pH", Ph, _diagnostics);
        if (added is null || ph is null)
        {
            return;
        }

        if (_points.Count > 0 && added.Value * unit <= _points[^1].Litres)
        {
            _diagnostics.Add(TitrationDiagnostics.NotMore(cells[0].Span));
        }
        else if (_points.Count == MostPoints)
        {
            _diagnostics.Add(YamlDiagnostics.OverLimit(cells[0].Span, "points", MostPoints));
        }
        else
        {
            _points.Add((added.Value * unit, ph.Value));
        }
    }
}
