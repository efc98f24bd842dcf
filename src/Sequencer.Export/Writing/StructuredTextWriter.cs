using Sequencer.Export.Wiring;
using Sequencer.Language.Programs;

namespace Sequencer.Export.Writing;

/// <summary>
/// Checked programs of a site as IEC 61131-3 structured text (third edition), written for a reviewer:
/// the order of the body is the order inside a scan of <c>spec/meaning.md</c>, and the head of every
/// block names the lines that it comes from.
/// </summary>
public static class StructuredTextWriter
{
    private const string Program = "PLANT_PROGRAM";
    private const string AllSignals = "source    the signals of all programs";
    private const string EverySite = "source    none: the same for every site with its scan period";

    public static StructuredTextExport Write(SiteProgram site, ExportHeader header)
    {
        TextLines text = new();
        text.Comment($"{header.Site}, revision {header.Revision}");
        text.Comment($"meaning {header.MeaningHash}");
        text.Comment("Written by a tool for review. It replaces no hazard study and no functional-safety assessment to");
        text.Comment("IEC 61511; local codes and licensed practice decide. Try it on water before any chemical.");
        List<UnitText> units = [.. site.Units.Select(unit => UnitWriter.Write(unit, site))];
        SiteBlockText? together = units.Count > 1 ? SiteBlockText.Of(units, site) : null;
        Contents(text, units, together is not null);
        text.Blank();
        DeclarationText.States(text);
        text.Blank();
        Block(text, header, "Scaling of loop currents", EverySite, block => ScalingText.Blocks(block, units));
        Block(text, header, $"{TaskText.Monitor}  Are scans lost?", EverySite, block => TaskText.Block(block, site.ScanMilliseconds));
        foreach (UnitText unit in units)
        {
            UnitWriter.Print(text, unit, header);
        }

        if (together is not null)
        {
            Block(text, header, $"{SiteBlockText.BlockName}  All units of the site, and what they see of each other", AllSignals, together.Print);
        }

        Block(text, header, $"{Program}  Inputs, units, outputs: what the task calls", AllSignals, block => WiringText.Write(block, units, together, Program));
        Block(text, header, "Plant  Inputs and outputs with their addresses, and the task", AllSignals, block => TaskText.Configuration(block, units, Program, site.ScanMilliseconds));
        return new StructuredTextExport(
            text.ToString(),
            together is null ? [.. units.Select(Block)] : [together.Block],
            new SiteWiring(WiredPoint.Of(site), [.. units.SelectMany(unit => WiringText.Operated(unit, together is not null))]));
    }

    /// <summary>What a reviewer finds in the file, in its order.</summary>
    private static void Contents(TextLines text, IReadOnlyList<UnitText> units, bool together)
    {
        text.Comment("In this file, each under a head of its own:");
        text.Comment($"  scaling of loop currents; {TaskText.Monitor}  are scans lost?");
        foreach (UnitText unit in units)
        {
            text.Comment($"  {unit.BlockName}  {unit.Unit.Title}");
        }

        if (together)
        {
            text.Comment($"  {SiteBlockText.BlockName}  all units, and what they see of each other");
        }

        text.Comment($"  {Program}  what the task calls");
        text.Comment("  CONFIGURATION Plant  inputs and outputs with their addresses, and the task");
        text.Comment("Each head tells the files and lines that the block comes from, and a hash of the lines between it and the blank");
        text.Comment("line before the next head (UTF-8, each line ended by LF). An edit in one unit changes no other unit's block.");
    }

    private static void Block(TextLines text, ExportHeader header, string title, string source, Action<TextLines> write)
    {
        TextLines block = new();
        write(block);
        if (block.ToString().Length > 0)
        {
            BlockHead.Write(text, title, [source], header.Revision, block);
        }
    }

    private static ExportedBlock Block(UnitText unit) => new(
        unit.Unit.Name,
        unit.BlockName,
        [.. unit.Declarations.Select(declaration => new ExportedVariable(declaration.Path, declaration.Name))],
        [.. unit.Unit.Steps.Select((step, index) => new ExportedStep(unit.Unit.Name, step.Number, unit.Place(step.Number).Branch, index + 1))]);
}
