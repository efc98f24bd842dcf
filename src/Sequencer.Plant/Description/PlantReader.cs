using System.Collections.Immutable;
using Sequencer.Plant.Reaction;
using Sequencer.Plant.Yaml;
using Sequencer.Text;

namespace Sequencer.Plant.Description;

/// <summary>
/// Reads <c>plant.yaml</c>. Takes its text, returns the checked model or null, and reports every
/// mistake in one pass: SEQ0801 to SEQ0812 of any YAML file and SEQ0830 to SEQ0840. The keys are
/// described in spec/plant.md.
/// </summary>
public static class PlantReader
{
    private const long Version = 1;

    public static PlantModel? Read(SourceText source, DiagnosticBag diagnostics) => Read(source, [], diagnostics);

    /// <summary>As above, with other values at some places; a mistake in one of them is reported where it is written.</summary>
    public static PlantModel? Read(SourceText source, IReadOnlyCollection<PlantChange> changes, DiagnosticBag diagnostics)
    {
        DiagnosticBag own = new();
        YamlMapping? root = YamlReader.Read(source, own) is { } written ? PlantChanges.Put(written, changes, own) : null;
        PlantModel? model = root is null ? null : Read(new YamlFields(root, own));
        if (model is not null && !own.HasErrors)
        {
            CheckWaters(model, own);
            CheckKept(model, own);
        }

        diagnostics.AddRange(own.InOrder());
        return own.HasErrors ? null : model;
    }

    private static void CheckWaters(PlantModel model, DiagnosticBag diagnostics)
    {
        ContentLayout contents = new(model);
        WaterChemistry chemistry = new(contents, model.Precipitates);
        foreach (SupplyDescription supply in model.Supplies)
        {
            if (WaterBalance.Compose(supply, contents, chemistry, out string reason) is null)
            {
                diagnostics.Add(PlantDiagnostics.WaterCannotHavePh(supply.Span, supply.Name, supply.Ph, supply.BalancedBy.Name, reason));
            }
        }
    }

    /// <summary>What is in the water is known when all is read. What leaves a tank in which solids settle depends on where it is drawn.</summary>
    private static void CheckKept(PlantModel model, DiagnosticBag diagnostics)
    {
        string[] known = [LineDescription.Flow, LineDescription.InADay, LineDescription.Temperature, .. new ContentLayout(model).Names];
        foreach (LineDescription line in model.Lines)
        {
            bool settles = model.Tanks.Any(tank => tank.Name == line.From && tank.Settling is not null);
            foreach (Placed<string> kept in line.KeepsHighest)
            {
                if (!known.Contains(kept.Value))
                {
                    diagnostics.Add(PlantDiagnostics.UnknownName(kept, "what passes a line", known));
                }
                else if (settles && kept.Value is not (LineDescription.Flow or LineDescription.InADay or LineDescription.Temperature))
                {
                    diagnostics.Add(YamlDiagnostics.NotAllowed(kept.Span, "a content kept of a line from a tank in which solids settle"));
                }
            }
        }
    }

    private static PlantModel Read(YamlFields fields)
    {
        CheckVersion(fields);
        PlantNames names = new(fields.Diagnostics);
        WaterReader waters = new(names);
        EquipmentReader equipment = new(names);
        ImmutableArray<SupplyDescription> supplies = waters.Supplies(fields);
        ImmutableArray<ReagentDescription> reagents = waters.Reagents(fields);
        ImmutableArray<TankDescription> tanks = equipment.Tanks(fields);
        ImmutableArray<DriveDescription> drives = equipment.Drives(fields);
        ImmutableArray<LineDescription> lines = FedPowder.Rates(new LineReader(names).Lines(fields), drives, reagents, fields.Diagnostics);
        HashSet<string> tankNames = [.. tanks.Select(tank => tank.Name)];
        HashSet<string> drawn = [.. lines.Where(line => tankNames.Contains(line.From)).Select(line => line.Name)];
        InstrumentReader instruments = new(names, drawn, HasCouple(supplies, reagents));
        (ImmutableArray<string> precipitates, ReactionTimes reactions) = Chemistry(fields);
        PlantModel model = new(
            fields.RequiredText("name").Value,
            fields.RequiredQuantity("ambient", Dimension.Temperature, WaterReader.LiquidCelsius),
            precipitates,
            reactions,
            supplies,
            reagents,
            tanks,
            drives,
            lines,
            equipment.DosingLines(fields),
            equipment.SampleLoops(fields),
            new DrumReader(names).Drums(fields),
            new PressReader(names).Presses(fields),
            instruments.Transmitters(fields),
            instruments.Switches(fields),
            instruments.HandSwitches(fields));
        fields.RejectUnknownKeys();
        names.CheckReferences();
        instruments.CheckPlaces(fields.Diagnostics);
        instruments.CheckPairs(fields.Diagnostics);
        return model;
    }

    /// <summary>A potential follows from one of the couples that the chemistry knows.</summary>
    private static bool HasCouple(ImmutableArray<SupplyDescription> supplies, ImmutableArray<ReagentDescription> reagents) =>
        (Names(supplies, reagents, "chromate") && Names(supplies, reagents, "sulphite"))
        || (Names(supplies, reagents, "cyanide") && Names(supplies, reagents, "hypochlorite"));

    private static bool Names(ImmutableArray<SupplyDescription> supplies, ImmutableArray<ReagentDescription> reagents, string substance) =>
        supplies.SelectMany(supply => supply.Dissolved).Concat(reagents.SelectMany(reagent => reagent.Dissolved))
            .Any(amount => amount.Substance.Name == substance);

    private static void CheckVersion(YamlFields fields)
    {
        long version = fields.RequiredWholeNumber("plant", 0, int.MaxValue);
        if (version != Version && fields.Has("plant") && !fields.Diagnostics.HasErrors)
        {
            fields.Diagnostics.Add(PlantDiagnostics.UnsupportedVersion(fields.SpanOf("plant"), version));
        }
    }

    private static (ImmutableArray<string> Precipitates, ReactionTimes Reactions) Chemistry(YamlFields fields)
    {
        if (fields.OptionalFields("chemistry") is not { } chemistry)
        {
            return ([], ReactionTimes.Default);
        }

        string[] known = [.. Precipitate.All.Select(solid => solid.Name)];
        ImmutableArray<string>.Builder solids = ImmutableArray.CreateBuilder<string>();
        foreach (Placed<string> solid in chemistry.EachText("precipitates"))
        {
            if (known.Contains(solid.Value, StringComparer.Ordinal))
            {
                solids.Add(solid.Value);
            }
            else
            {
                fields.Diagnostics.Add(YamlDiagnostics.UnknownWord(solid.Span, "`precipitates`", solid.Value, known));
            }
        }

        ReactionTimes usual = ReactionTimes.Default;
        ReactionTimes reactions = new(
            Time(chemistry, "chromate_reduced_in", usual.ChromateReduced),
            Time(chemistry, "cyanide_oxidised_in", usual.CyanideOxidised),
            Time(chemistry, "cyanogen_chloride_hydrolysed_in", usual.CyanogenChlorideHydrolysed),
            Time(chemistry, "cyanate_oxidised_in", usual.CyanateOxidised));
        chemistry.RejectUnknownKeys();
        return (solids.ToImmutable(), reactions);
    }

    private static double Time(YamlFields chemistry, string key, double otherwise) =>
        chemistry.OptionalQuantity(key, Dimension.Time, NumberRange.Positive)?.Value ?? otherwise;
}
