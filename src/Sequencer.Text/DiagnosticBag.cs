using System.Collections.Immutable;

namespace Sequencer.Text;

/// <summary>Collects the diagnostics of one stage; equal ones of one cause are kept once, the result is in order.</summary>
public sealed class DiagnosticBag
{
    private readonly HashSet<(string Code, string Path, TextSpan Span, string Message)> _seen = [];
    private readonly List<Diagnostic> _diagnostics = [];

    public bool HasErrors { get; private set; }

    public void Add(Diagnostic diagnostic)
    {
        SourceSpan cause = diagnostic.Span.Cause;
        if (_seen.Add((diagnostic.Code, cause.Source.Path, cause.Span, diagnostic.Message)))
        {
            _diagnostics.Add(diagnostic);
            HasErrors |= diagnostic.Severity == Severity.Error;
        }
    }

    public void AddRange(IEnumerable<Diagnostic> diagnostics)
    {
        foreach (Diagnostic diagnostic in diagnostics)
        {
            Add(diagnostic);
        }
    }

    public ImmutableArray<Diagnostic> InOrder()
    {
        List<Diagnostic> sorted = [.. _diagnostics];
        sorted.Sort(Diagnostic.Compare);
        return [.. sorted];
    }
}
