using System.Collections.Immutable;
using Sequencer.Language.Programs;
using Sequencer.Text;

namespace Sequencer.Language.Checking;

/// <summary>
/// What the checker found in one file. <see cref="Program"/> is null where a mistake left part of
/// the program without a meaning; <see cref="Diagnostics"/> are in the order of the file.
/// </summary>
public sealed record CheckResult(UnitProgram? Program, ImmutableArray<Diagnostic> Diagnostics)
{
    public bool HasErrors => Diagnostics.Any(diagnostic => diagnostic.Severity == Severity.Error);
}
