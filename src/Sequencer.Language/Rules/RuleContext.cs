using Sequencer.Text;

namespace Sequencer.Language.Rules;

/// <summary>What a rule may know beside the program, and where it tells what it found.</summary>
internal sealed class RuleContext
{
    private readonly DiagnosticBag _diagnostics;

    public RuleContext(int scanMilliseconds, DiagnosticBag diagnostics)
    {
        ScanMilliseconds = scanMilliseconds;
        _diagnostics = diagnostics;
    }

    /// <summary>The site's scan period.</summary>
    public int ScanMilliseconds { get; }

    public void Report(Diagnostic diagnostic) => _diagnostics.Add(diagnostic);
}
