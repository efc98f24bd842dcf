using Sequencer.Language.Programs;
using Sequencer.Language.Syntax;
using Sequencer.Text;

namespace Sequencer.Language.Binding;

/// <summary>
/// Every name of a unit, in one namespace, whatever the order of declaration; other units' names through the site. Names that a malformed line
/// seems to declare are known to be poisoned: asking for one says nothing more.
/// </summary>
internal sealed class SymbolTable
{
    private readonly Dictionary<string, Symbol> _symbols = new(StringComparer.Ordinal);
    private readonly Dictionary<string, Symbol> _byFoldedName = new(StringComparer.OrdinalIgnoreCase);
    private readonly HashSet<string> _poisoned = new(StringComparer.Ordinal);
    private readonly HashSet<string> _missing = new(StringComparer.Ordinal);
    private readonly string _unit;
    private readonly SiteNames _site;
    private readonly DiagnosticBag _diagnostics;
    private bool _anythingMayBeDeclared;

    public SymbolTable(string unit, SiteNames site, DiagnosticBag diagnostics)
    {
        _unit = unit;
        _site = site;
        _diagnostics = diagnostics;
    }

    /// <summary>Whether the name was free; if not, that is reported.</summary>
    public bool Declare(string name, SymbolKind kind, DeclarationSyntax? syntax, LinePlace place, SourceSpan span)
    {
        if (_byFoldedName.TryGetValue(name, out Symbol? first))
        {
            _diagnostics.Add(first.Name == name
                ? NameDiagnostics.DeclaredTwice(span, name, first)
                : NameDiagnostics.DiffersInCaseOnly(span, name, first));
            _poisoned.Add(name);
            return false;
        }

        Symbol symbol = new(name, kind, syntax, place, span);
        _symbols.Add(name, symbol);
        _byFoldedName.Add(name, symbol);
        CheckSpelling(name, span);
        return true;
    }

    /// <summary>The name stands where a malformed line would declare it; null: any name might have been declared.</summary>
    public void Poison(string? name)
    {
        if (name is null)
        {
            _anythingMayBeDeclared = true;
        }
        else
        {
            _poisoned.Add(name);
        }
    }

    /// <summary>The symbol of an own name or of another unit's; nothing is reported.</summary>
    public Symbol? Find(string name)
    {
        if (!QualifiedName.IsForeign(name))
        {
            return _symbols.GetValueOrDefault(name);
        }

        (string unit, string below) = QualifiedName.Split(name);
        return unit == _unit
            ? _symbols.GetValueOrDefault(below)
            : _site.Find(unit)?.Context.Symbols.Find(below) is { } found ? found with { Unit = unit } : null;
    }

    /// <summary>The symbol, if it is of a kind that <paramref name="fits"/>; otherwise that is reported once and null returned.</summary>
    public Symbol? Resolve(WordSyntax name, LinePlace place, Func<Symbol, bool> fits, string needed)
    {
        if (QualifiedName.IsForeign(name.Text))
        {
            return ResolveElsewhere(name, place, fits, needed);
        }

        if (_symbols.TryGetValue(name.Text, out Symbol? symbol))
        {
            if (fits(symbol))
            {
                return symbol;
            }

            if (!_poisoned.Contains(name.Text))
            {
                _diagnostics.Add(NameDiagnostics.WrongKind(place.At(name), symbol, needed));
            }

            return null;
        }

        if (!_anythingMayBeDeclared && !_poisoned.Contains(name.Text))
        {
            ReportUnknown(name, place, fits);
        }

        return null;
    }

    /// <summary>Another unit by its name; null where there is none, which is reported once.</summary>
    public UnitNames? ResolveUnit(string unit, SourceSpan span)
    {
        if (_site.Find(unit) is { } found)
        {
            return found;
        }

        if (!_site.UnitsMayBeMissing)
        {
            SourceSpan word = new(span.Source, new TextSpan(span.Span.Start, Math.Min(unit.Length, span.Span.Length)));
            _diagnostics.Add(UnitDiagnostics.UnknownUnit(span, unit, NearestWord.Find(unit, _site.Names), Find(unit)) with
            {
                Fix = Fix.Replace(word, NearestWord.Only(unit, _site.Names)),
            });
        }

        return null;
    }

    private Symbol? ResolveElsewhere(WordSyntax name, LinePlace place, Func<Symbol, bool> fits, string needed)
    {
        (string unit, string below) = QualifiedName.Split(name.Text);
        if (unit == _unit)
        {
            return Resolve(new WordSyntax(below, name.Span), place, fits, needed);
        }

        if (ResolveUnit(unit, place.At(name)) is not { } other)
        {
            return null;
        }

        SymbolTable theirs = other.Context.Symbols;
        if (theirs.Find(below) is not { } symbol)
        {
            if (!theirs._anythingMayBeDeclared && !theirs._poisoned.Contains(below))
            {
                string[] seen = [.. theirs._symbols.Values.Where(found => fits(found) && found.IsPublished).Select(found => found.Name)];
                string? only = NearestWord.Only(below, seen);
                _diagnostics.Add(UnitDiagnostics.UnknownElsewhere(place.At(name), unit, below, NearestWord.Find(below, seen)) with
                {
                    Fix = Fix.Replace(place.At(name), only is null ? null : QualifiedName.Of(unit, only)),
                });
            }

            return null;
        }

        other.Context.ReadElsewhere.Add(below);
        if (fits(symbol) && symbol.IsPublished)
        {
            return symbol with { Unit = unit };
        }

        if (!theirs._poisoned.Contains(below))
        {
            _diagnostics.Add(symbol.IsPublished
                ? NameDiagnostics.WrongKind(place.At(name), symbol, needed)
                : UnitDiagnostics.NotPublished(place.At(name), unit, symbol));
        }

        return null;
    }

    /// <summary>A misspelling is told wherever it stands; a name that nothing resembles lacks a declaration, told once.</summary>
    private void ReportUnknown(WordSyntax name, LinePlace place, Func<Symbol, bool> fits)
    {
        string[] fitting = [.. _symbols.Values.Where(fits).Select(symbol => symbol.Name)];
        string? near = NearestWord.Find(name.Text, fitting);
        if (near is not null || _missing.Add(name.Text))
        {
            _diagnostics.Add(NameDiagnostics.Unknown(place.At(name), name.Text, near is null ? null : _symbols[near]) with
            {
                Fix = Fix.Replace(place.At(name), NearestWord.Only(name.Text, fitting)),
            });
        }
    }

    private void CheckSpelling(string name, SourceSpan span)
    {
        if (ReservedWords.Contains(name))
        {
            _diagnostics.Add(NameDiagnostics.Reserved(span, name));
        }
        else if (name.Contains("__", StringComparison.Ordinal) || name.EndsWith('_') || name.Contains('/', StringComparison.Ordinal) || name == "%")
        {
            _diagnostics.Add(NameDiagnostics.Misshapen(span, name));
        }
    }
}
