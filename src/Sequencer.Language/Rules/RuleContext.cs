using Sequencer.Language.Programs;
using Sequencer.Text;

namespace Sequencer.Language.Rules;

/// <summary>What a rule may know beside the program, and where it tells what it found.</summary>
internal sealed class RuleContext
{
    private readonly DiagnosticBag _diagnostics;
    private ProgramFacts? _facts;

    public RuleContext(int scanMilliseconds, DiagnosticBag diagnostics, IReadOnlySet<string> readElsewhere)
    {
        ReadElsewhere = readElsewhere;
        ScanMilliseconds = scanMilliseconds;
        _diagnostics = diagnostics;
    }

    /// <summary>The site's scan period.</summary>
    public int ScanMilliseconds { get; }

    /// <summary>Names of the program that other units of the site read.</summary>
    public IReadOnlySet<string> ReadElsewhere { get; }

    /// <summary>What rules share of their work on the program; kept for the one asked about last.</summary>
    public ProgramFacts Facts(UnitProgram program) =>
        ReferenceEquals(_facts?.Program, program) ? _facts : _facts = new ProgramFacts(program);

    public void Report(Diagnostic diagnostic) => _diagnostics.Add(diagnostic);
}
