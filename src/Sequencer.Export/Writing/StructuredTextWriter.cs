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

    /// <summary>The least that <see cref="TextDialect.LongestName"/> may be for a site, and the name that makes it so; null where reading does.</summary>
    public static (int Letters, string? Name) LeastNameLength(SiteProgram site)
    {
        string longest = site.Units.SelectMany(unit => GlobalText.Names(unit).Append(UnitText.NameOfBlock(unit))).MaxBy(name => name.Length) ?? "";
        return longest.Length > ShortNames.Least ? (longest.Length, longest) : (ShortNames.Least, null);
    }

    public static StructuredTextExport Write(SiteProgram site, ExportHeader header) => Write(site, header, TextDialect.Default);

    public static StructuredTextExport Write(SiteProgram site, ExportHeader header, TextDialect dialect)
    {
        List<UnitText> units = [.. site.Units.Select(unit => UnitWriter.Write(unit, site, dialect))];
        SiteBlockText? together = units.Count > 1 ? SiteBlockText.Of(units, site) : null;
        TextBlock[] blocks = [.. Blocks(site, units, together).Where(block => !block.Lines.IsEmpty)];
        ShortNames names = new(blocks, dialect.LongestName);
        TextLines text = new();
        text.Comment($"{header.Site}, revision {header.Revision}");
        text.Comment($"meaning {header.MeaningHash}");
        text.Comment("Written by a tool for review. It replaces no hazard study and no functional-safety assessment to");
        text.Comment("IEC 61511; local codes and licensed practice decide. Try it on water before any chemical. An emergency stop acts");
        text.Comment("in hardware, on the supply of what it must stop: what this program reads of it is for information, and it only follows.");
        if (dialect != TextDialect.Default)
        {
            text.Comment(dialect.InHead());
        }

        Contents(text, units, together is not null);
        names.Table(text);
        text.Blank();
        if (dialect.States == StateForm.Enumerated)
        {
            DeclarationText.States(text);
            text.Blank();
        }

        foreach (TextBlock block in blocks)
        {
            BlockHead.Write(text, block.Title, block.Origin, header.Revision, names.In(block.Lines));
        }

        return new StructuredTextExport(
            text.ToString(),
            [.. (together is null ? units.Select(Block) : [together.Block]).Select(names.Of)],
            new SiteWiring(WiredPoint.Of(site), [.. units.SelectMany(unit => WiringText.Operated(unit, together is not null)).Select(names.Of)]));
    }

    private static IEnumerable<TextBlock> Blocks(SiteProgram site, IReadOnlyList<UnitText> units, SiteBlockText? together)
    {
        yield return Block("Scaling of loop currents", EverySite, block => ScalingText.Blocks(block, units));
        yield return Block($"{TaskText.Monitor}  Are scans lost?", EverySite, block => TaskText.Block(block, site.ScanMilliseconds));
        foreach (UnitText unit in units)
        {
            yield return UnitWriter.Block(unit);
        }

        if (together is not null)
        {
            yield return Block($"{SiteBlockText.BlockName}  All units of the site, and what they see of each other", AllSignals, together.Print);
        }

        yield return Block($"{Program}  Inputs, units, outputs: what the task calls", AllSignals, block => WiringText.Write(block, units, together, Program));
        yield return Block("Plant  Inputs and outputs with their addresses, and the task", AllSignals, block => TaskText.Configuration(block, units, Program, site.ScanMilliseconds));
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

    private static TextBlock Block(string title, string source, Action<TextLines> write)
    {
        TextLines block = new();
        write(block);
        return new TextBlock(title, [source], block);
    }

    private static ExportedBlock Block(UnitText unit) => new(
        unit.Unit.Name,
        unit.BlockName,
        [.. unit.Declarations.Select(declaration => new ExportedVariable(declaration.Path, declaration.Name))],
        [.. unit.Unit.Steps.Select(step => new ExportedStep(unit.Unit.Name, step.Number, unit.Place(step.Number).Branch, MemoryText.CopyOf(unit, step.Number), unit.StepNumber(step)))]);
}
