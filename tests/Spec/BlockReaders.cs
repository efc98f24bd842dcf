using System.Collections.Immutable;
using Sequencer.Language.Checking;
using Sequencer.Plant.Description;
using Sequencer.Plant.Response;
using Sequencer.Plant.Titration;
using Sequencer.Plant.Yaml;
using Sequencer.Sites.Descriptions;
using Sequencer.Sites.Recipes;
using Sequencer.Sites.Scenarios;
using Sequencer.Sites.Trials;
using Sequencer.StructuredText;
using Sequencer.Text;

namespace Sequencer.Spec.Tests;

/// <summary>Reads a block as what its fence line calls it, with the reader that the tool itself uses.</summary>
internal static class BlockReaders
{
    private const int ScanMilliseconds = 100;

    /// <summary>The first words of a fence line, and what reads such a block.</summary>
    private static readonly Dictionary<string, Func<SourceText, ImmutableArray<Diagnostic>>> Readers = new()
    {
        ["seq"] = text => ProgramChecker.Check(text, ScanMilliseconds, libraries: HasLibraries(text.Path) ? LibraryBlock : null).Diagnostics,
        ["seq units"] = text => SiteChecker.Check(Units(text), ScanMilliseconds).Diagnostics,
        ["seqlib"] = ProgramChecker.CheckLibrary,
        ["st"] = text => StructuredTextReader.Read(text, new ReadingOptions(ScanMilliseconds: ScanMilliseconds)).Diagnostics,
        ["csv trend"] = text => Collect(bag => TrendTableReader.Read(text, new HashSet<string>(), new HashSet<string>(), bag)),
        ["csv dose"] = text => Collect(bag => DoseTableReader.Read(text, bag)),
        ["yaml plant"] = text => Collect(bag => PlantReader.Read(text, bag)),
        ["yaml"] = text => Collect(bag => YamlReader.Read(text, bag)),
        ["yaml site"] = text => Collect(bag => SiteDescriptionReader.Read(text, bag)),
        ["yaml recipe"] = text => Collect(bag => RecipeReader.Read(text, bag)),
        ["yaml trials"] = text => Collect(bag => TrialReader.Read(text, bag)),
        ["yaml scenario"] = text => Collect(bag => ScenarioReader.Read(text, bag)),
    };

    public static ImmutableArray<Diagnostic> Read(string kind, FencedBlock block)
    {
        Assert.True(Readers.ContainsKey(kind), $"{block}: no such fence line");
        return Readers[kind](new SourceText(block.Path, block.Text));
    }

    /// <summary>Several programs in one block; each begins with its own `language` line.</summary>
    private static List<SourceText> Units(SourceText text) =>
    [
        .. text.Content.Split("language 1\n", StringSplitOptions.RemoveEmptyEntries)
            .Select((unit, index) => new SourceText($"{text.Path} ({index + 1})", "language 1\n" + unit)),
    ];

    private static bool HasLibraries(string document) => Documents.Blocks.Any(block => block.Path == document && block.Tag.StartsWith("seqlib ", StringComparison.Ordinal));

    /// <summary>A program's libraries are the blocks <c>seqlib NAME</c> of the same document; where there are none it is checked by itself.</summary>
    private static SourceText? LibraryBlock(string file, SourceSpan named, DiagnosticBag diagnostics)
    {
        FencedBlock? found = Documents.Blocks.FirstOrDefault(block => block.Path == named.Source.Path && block.Tag.Split(' ') is ["seqlib", var name, ..] && name == file);
        if (found is null)
        {
            diagnostics.Add(SiteDiagnostics.NoSuchFile(named, file));
            return null;
        }

        return new SourceText(found.Path, found.Text);
    }

    private static ImmutableArray<Diagnostic> Collect(Action<DiagnosticBag> read)
    {
        DiagnosticBag bag = new();
        read(bag);
        return bag.InOrder();
    }
}
