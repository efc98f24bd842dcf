using System.Collections.Immutable;
using Sequencer.Text;

namespace Sequencer.Spec.Tests;

/// <summary>What the blocks of the documents that show mistakes read like with the fixes that are offered for them.</summary>
internal static class MendedBlocks
{
    private static readonly string[] Kinds = ["seq units", "seqlib", "seq"];

    /// <summary>Each block of a page with a fix for one of its diagnostics, and the code of that.</summary>
    public static IReadOnlyList<(FencedBlock Block, string Kind, string Code)> All { get; } = [.. Find()];

    /// <summary>The codes for which a fix is shown on their own page.</summary>
    public static ImmutableSortedSet<string> Codes { get; } =
        [.. All.Where(found => found.Block.Path.EndsWith($"/{found.Code}.md", StringComparison.Ordinal)).Select(found => found.Code)];

    /// <summary>The block with every fix for diagnostics of the code put in.</summary>
    public static FencedBlock Mend(FencedBlock block, string kind, string code)
    {
        string text = block.Text;
        IEnumerable<TextEdit> edits = BlockReaders.Read(kind, block).Where(diagnostic => diagnostic.Code == code).SelectMany(diagnostic => diagnostic.Fix?.Edits ?? []);
        foreach (IGrouping<string, TextEdit> part in edits.GroupBy(edit => edit.Span.Source.Content))
        {
            string mended = TextEdits.Apply(part.Key, part) ?? throw new InvalidOperationException($"{block}: its fixes touch the same words");
            text = text.Replace(part.Key, mended, StringComparison.Ordinal);
        }

        return block with { Text = text };
    }

    /// <summary>A mistake of a library is told with the program that uses it, too; it is mended in the library's own block.</summary>
    private static bool IsIn(FencedBlock block, Fix? fix) => fix is not null && fix.Edits.All(edit => block.Text.Contains(edit.Span.Source.Content, StringComparison.Ordinal));

    private static IEnumerable<(FencedBlock, string, string)> Find() =>
        from block in Documents.Blocks
        where block.Tag.Contains("SEQ", StringComparison.Ordinal)
        let kind = Kinds.FirstOrDefault(kind => block.Tag.StartsWith(kind + " ", StringComparison.Ordinal))
        where kind is not null
        from code in BlockReaders.Read(kind, block).Where(diagnostic => IsIn(block, diagnostic.Fix)).Select(diagnostic => diagnostic.Code).Distinct()
        select (block, kind, code);
}
