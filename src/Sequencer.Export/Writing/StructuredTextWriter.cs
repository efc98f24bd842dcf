using Sequencer.Language.Programs;

namespace Sequencer.Export.Writing;

/// <summary>
/// Checked programs of a site as IEC 61131-3 structured text (third edition), written for a reviewer:
/// the order of the body is the order inside a scan of <c>spec/meaning.md</c>, and every block names the
/// line that it comes from.
/// </summary>
public static class StructuredTextWriter
{
    public static StructuredTextExport Write(SiteProgram site, ExportHeader header)
    {
        TextLines text = new();
        text.Comment($"{header.Site}, revision {header.Revision}");
        text.Comment($"meaning {header.MeaningHash}");
        text.Comment("Written by a tool for review. It replaces no hazard study and no functional-safety assessment to");
        text.Comment("IEC 61511; local codes and licensed practice decide. Try it on water before any chemical.");
        text.Blank();
        DeclarationText.States(text);
        text.Blank();
        List<UnitText> units = [.. site.Units.Select(unit => UnitWriter.Write(unit, site))];
        SiteBlockText? together = units.Count > 1 ? SiteBlockText.Of(units, site) : null;
        foreach (UnitText unit in units)
        {
            UnitWriter.Print(text, unit, header);
            text.Blank();
        }

        together?.Print(text);
        WiringText.Write(text, units, together, "PLANT_PROGRAM", site.ScanMilliseconds);
        return new StructuredTextExport(text.ToString(), together is null ? [.. units.Select(Block)] : [together.Block]);
    }

    private static ExportedBlock Block(UnitText unit) => new(
        unit.Unit.Name,
        unit.BlockName,
        [.. unit.Declarations.Select(declaration => new ExportedVariable(declaration.Path, declaration.Name))],
        [.. unit.Unit.Steps.Select((step, index) => new ExportedStep(unit.Unit.Name, step.Number, unit.Place(step.Number).Branch, index + 1))]);
}
