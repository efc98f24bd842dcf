using System.Collections.Immutable;
using Sequencer.Language.Programs;
using Sequencer.Text;

namespace Sequencer.Language.Checking;

/// <summary>
/// What the checker found in the programs of a site: a result for each file, in the order given. A file's diagnostics
/// include what it does wrong toward other files.
/// </summary>
public sealed record SiteCheckResult(ImmutableArray<CheckResult> Files)
{
    public ImmutableArray<Diagnostic> Diagnostics => [.. Files.SelectMany(file => file.Diagnostics)];

    /// <summary>The programs that could be given a meaning.</summary>
    public ImmutableArray<UnitProgram> Units => [.. Files.Select(file => file.Program).OfType<UnitProgram>()];
}
