using System.Collections.Immutable;
using Sequencer.Text;

namespace Sequencer.Sites;

/// <summary>
/// What a command on a site found: its outcome, the diagnostics of the site's files, the text for a
/// person, the same as JSON, and the files written.
/// </summary>
public sealed record SiteResult(
    Outcome Outcome,
    ImmutableArray<Diagnostic> Diagnostics,
    string Text,
    string Json,
    ImmutableArray<string> Files)
{
    /// <summary>What is to be told before the diagnostics: what was done to the site's own files.</summary>
    public string Before { get; init; } = "";
}
