using System.Collections.Immutable;
using Sequencer.Plant.Yaml;
using Sequencer.Text;

namespace Sequencer.Sites.Descriptions;

/// <summary>Reads <c>site.yaml</c>; reports SEQ0906, SEQ0909, SEQ0910 and the diagnostics of the YAML reader.</summary>
public static class SiteDescriptionReader
{
    private const double LongestScanSeconds = 10.0;

    /// <summary>The description, or null where the text is no YAML; complete only if no error was added.</summary>
    public static SiteDescription? Read(SourceText source, DiagnosticBag diagnostics)
    {
        YamlMapping? mapping = YamlReader.Read(source, diagnostics);
        if (mapping is null)
        {
            return null;
        }

        YamlFields fields = new(mapping, diagnostics);
        fields.RequiredWholeNumber("site", 1, 1);
        string name = fields.RequiredText("name").Value;
        string title = fields.RequiredText("title").Value;
        string revision = fields.RequiredText("revision").Value;
        double scanSeconds = fields.RequiredQuantity("scan", Dimension.Time, new NumberRange(0.001, LongestScanSeconds));
        ImmutableArray<PlacedFile> programs = [.. fields.EachText("programs").Select(program => new PlacedFile(program.Value, program.Span))];
        Placed<string> plant = fields.RequiredText("plant");
        SiteDescription description = new(
            name,
            title,
            revision,
            (int)Math.Round(scanSeconds * 1000),
            programs,
            new PlacedFile(plant.Value, plant.Span),
            Consent(fields, diagnostics),
            [.. fields.EachText("signs").Select(role => role.Value)],
            Hazards(fields, diagnostics));
        if (programs.IsEmpty)
        {
            diagnostics.Add(YamlDiagnostics.MissingKey(mapping.Span, "programs"));
        }

        fields.RejectUnknownKeys();
        return description;
    }

    private static ImmutableArray<ConsentLimit> Consent(YamlFields fields, DiagnosticBag diagnostics)
    {
        ImmutableArray<ConsentLimit>.Builder limits = ImmutableArray.CreateBuilder<ConsentLimit>();
        foreach (YamlFields item in fields.EachItem("consent"))
        {
            Placed<string> quantity = item.RequiredText("quantity");
            string title = item.RequiredText("title").Value;
            double? low = item.OptionalNumber("low", NumberRange.Any);
            double? high = item.OptionalNumber("high", NumberRange.Any);
            if (low is null && high is null)
            {
                diagnostics.Add(SiteDiagnostics.ConsentWithoutBounds(item.Span, quantity.Value));
            }

            item.RejectUnknownKeys();
            limits.Add(new ConsentLimit(quantity.Value, title, low, high, quantity.Span));
        }

        return limits.ToImmutable();
    }

    private static ImmutableArray<Hazard> Hazards(YamlFields fields, DiagnosticBag diagnostics)
    {
        ImmutableArray<Hazard>.Builder hazards = ImmutableArray.CreateBuilder<Hazard>();
        HashSet<string> names = new(StringComparer.Ordinal);
        foreach (YamlFields item in fields.EachItem("hazards"))
        {
            Placed<string> id = item.RequiredText("id");
            string text = item.RequiredText("text").Value;
            string? open = item.OptionalText("open")?.Value;
            ImmutableArray<string> metBy = [.. item.EachText("met_by").Select(requirement => requirement.Value)];
            if (metBy.IsEmpty == open is null)
            {
                diagnostics.Add(SiteDiagnostics.HazardNeitherMetNorOpen(id.Span, id.Value));
            }

            if (!names.Add(id.Value))
            {
                diagnostics.Add(SiteDiagnostics.HazardNamedTwice(id.Span, id.Value));
            }

            item.RejectUnknownKeys();
            hazards.Add(new Hazard(id.Value, text, metBy, open, id.Span));
        }

        return hazards.ToImmutable();
    }
}
