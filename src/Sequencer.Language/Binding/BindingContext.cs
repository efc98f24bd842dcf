using System.Collections.Immutable;
using Sequencer.Language.Units;
using Sequencer.Text;

namespace Sequencer.Language.Binding;

/// <summary>What every binder of one program shares.</summary>
internal sealed class BindingContext
{
    public BindingContext(SourceText source, string unit, int scanMilliseconds, SiteNames site, DiagnosticBag diagnostics)
    {
        UnitName = unit;
        Site = site;
        Source = source;
        ScanMilliseconds = scanMilliseconds;
        Diagnostics = diagnostics;
        Symbols = new SymbolTable(unit, site, diagnostics);
    }

    public SourceText Source { get; }

    /// <summary>The unit's own name; empty where its line is missing.</summary>
    public string UnitName { get; }

    public SiteNames Site { get; }

    public int ScanMilliseconds { get; }

    /// <summary>Names of this unit that other units read.</summary>
    public HashSet<string> ReadElsewhere { get; } = new(StringComparer.Ordinal);

    public DiagnosticBag Diagnostics { get; }

    public SymbolTable Symbols { get; }

    /// <summary>The outputs of shared equipment, by their tags: what must be claimed for them.</summary>
    public Dictionary<string, string> SharedOutputs { get; } = new(StringComparer.Ordinal);

    /// <summary>The numbers of all steps.</summary>
    public SortedSet<int> Steps { get; } = [];

    /// <summary>The protections that some line may override.</summary>
    public HashSet<string> Overridable { get; } = new(StringComparer.Ordinal);

    /// <summary>A malformed line may have been a step: an unknown number is not told.</summary>
    public bool StepsMayBeMissing { get; set; }

    /// <summary>The steps that dose an amount with an output, by its name; null where a malformed line may have been such a dose.</summary>
    public ILookup<string, int>? AmountDoses { get; set; }

    /// <summary>The answers of each prompt, by its name.</summary>
    public Dictionary<string, ImmutableArray<string>> Answers { get; } = new(StringComparer.Ordinal);

    public void Report(Diagnostic diagnostic) => Diagnostics.Add(diagnostic);

    /// <summary>How much an output's total grows in one scan, in litres.</summary>
    public Rational LitresPerScan(Rational litresPerSecond) => litresPerSecond * new Rational(ScanMilliseconds, 1000);
}
