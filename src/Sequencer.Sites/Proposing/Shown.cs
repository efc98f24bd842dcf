using System.Collections.Immutable;
using Sequencer.Proof;
using Sequencer.Text;

namespace Sequencer.Sites.Proposing;

/// <summary>What was shown of a site with an addition, beside that nothing failed which held.</summary>
/// <param name="Verdict">Of the requirement that was broken.</param>
/// <param name="Requirements">Requirements and obligations that held before and hold still.</param>
/// <param name="Ways">Steps and transitions that could be reached and can be still.</param>
/// <param name="Scenarios">Scenarios that came out as expected and do still.</param>
/// <param name="AlsoHold">Other requirements that failed and hold with the addition.</param>
internal sealed record Shown(Holds Verdict, int Requirements, int Ways, int Scenarios, ImmutableArray<string> AlsoHold)
{
    /// <summary>What a check warns of with the addition, and not without.</summary>
    public ImmutableArray<Diagnostic> Warnings { get; init; } = [];
}
