using System.Collections.Immutable;
using Sequencer.Text;

namespace Sequencer.Spec.Tests;

/// <summary>A fix that is offered takes its mistake away and brings no other one.</summary>
public sealed class FixTests
{
    private const int FewestCodes = 12;

    public static TheoryData<string> Offered => [.. MendedBlocks.All.Select(found => $"{found.Block} {found.Code}")];

    [Fact]
    public void Many_codes_offer_one_and_show_it_on_their_page() =>
        Assert.True(MendedBlocks.Codes.Count >= FewestCodes, $"only {string.Join(", ", MendedBlocks.Codes)}");

    [Theory]
    [MemberData(nameof(Offered))]
    public void A_fix_takes_its_mistake_away_and_brings_no_other(string offered)
    {
        (FencedBlock block, string kind, string code) = MendedBlocks.All.Single(found => $"{found.Block} {found.Code}" == offered);
        ImmutableArray<Diagnostic> before = BlockReaders.Read(kind, block);
        FencedBlock mended = MendedBlocks.Mend(block, kind, code);
        ImmutableArray<Diagnostic> after = BlockReaders.Read(kind, mended);
        string told = mended.Text + DiagnosticRenderer.Render(after);
        int left = before.Count(diagnostic => diagnostic.Code == code && diagnostic.Fix is null);
        Assert.True(after.Count(diagnostic => diagnostic.Code == code) == left, told);
        Assert.True(after.All(diagnostic => diagnostic.Severity != Severity.Error || before.Any(other => other.Code == diagnostic.Code)), told);
    }

    /// <summary>A limit that a machine rounds, or a dose it converts, would be a decision about the plant.</summary>
    [Fact]
    public void No_fix_changes_a_number()
    {
        Assert.NotEmpty(MendedBlocks.All);
        Assert.All(MendedBlocks.All, found =>
        {
            foreach (TextEdit edit in BlockReaders.Read(found.Kind, found.Block).SelectMany(diagnostic => diagnostic.Fix?.Edits ?? []).Where(edit => edit.Text.Length > 0 && edit.Span.Span.Length > 0))
            {
                Assert.Equal(Number(edit.Span.Text.ToString()), Number(edit.Text));
            }
        });
    }

    /// <summary>The number that words begin with; empty for names and words.</summary>
    private static string Number(string words) => string.Concat(words.TakeWhile(character => char.IsAsciiDigit(character) || character == '.')).TrimEnd('.');
}
