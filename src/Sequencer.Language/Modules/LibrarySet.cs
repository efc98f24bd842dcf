using System.Collections.Immutable;
using Sequencer.Text;

namespace Sequencer.Language.Modules;

/// <summary>The libraries of one program, each read once, and which modules can be seen from where.</summary>
internal sealed class LibrarySet
{
    private readonly LibraryReader? _reader;
    private readonly DiagnosticBag _diagnostics;
    private readonly Dictionary<string, Library?> _read = new(StringComparer.Ordinal);

    public LibrarySet(LibraryReader? reader, DiagnosticBag diagnostics)
    {
        _reader = reader;
        _diagnostics = diagnostics;
    }

    /// <summary>False where a library that was asked for could not be read: then nothing can be said of what is missing.</summary>
    public bool AllRead { get; private set; } = true;

    /// <summary>The modules of the libraries that are used; two of one name are reported.</summary>
    public ImmutableArray<Module> Seen(ImmutableArray<(string File, SourceSpan Span)> uses)
    {
        ImmutableArray<Module>.Builder modules = ImmutableArray.CreateBuilder<Module>();
        foreach ((string file, SourceSpan span) in uses.DistinctBy(use => use.File))
        {
            foreach (Module module in Read(file, span)?.Modules ?? [])
            {
                if (modules.FirstOrDefault(other => other.Name == module.Name && other.Source != module.Source) is { } first)
                {
                    _diagnostics.Add(ModuleDiagnostics.TwoModules(module.Span, first));
                }

                modules.Add(module);
            }
        }

        return modules.ToImmutable();
    }

    /// <summary>The modules that a module can use: those beside it, and those of the libraries that its library uses.</summary>
    public ImmutableArray<Module> SeenFrom(Module module)
    {
        Library home = _read.Values.OfType<Library>().First(library => library.Source == module.Source);
        return [.. home.Modules, .. Seen([.. home.Uses.Where(use => Read(use.File, use.Span) != home)])];
    }

    /// <summary>Reports each <c>use</c>, in the program and in the libraries reached from it, that brings nothing that is asked for.</summary>
    /// <param name="uses">Those of the program.</param>
    /// <param name="asked">The modules that its equipment is made from.</param>
    public void ReportUseless(ImmutableArray<(string File, SourceSpan Span)> uses, ImmutableHashSet<string> asked)
    {
        ReportUseless(uses, asked, []);
        HashSet<Library> told = [];
        while (_read.Values.OfType<Library>().FirstOrDefault(told.Add) is { } library)
        {
            ReportUseless(library.Uses, [.. library.Modules.SelectMany(module => module.Parts)], library.Modules);
        }
    }

    private void ReportUseless(ImmutableArray<(string File, SourceSpan Span)> uses, ImmutableHashSet<string> asked, ImmutableArray<Module> beside)
    {
        HashSet<string> known = [.. beside.Concat(uses.SelectMany(use => Read(use.File, use.Span)?.Modules ?? [])).Select(module => module.Name)];
        bool canBeTold = AllRead && known.IsSupersetOf(asked);
        HashSet<string> seen = new(StringComparer.Ordinal);
        foreach ((string file, SourceSpan span) in uses)
        {
            if (!seen.Add(file))
            {
                _diagnostics.Add(ModuleDiagnostics.UselessUse(span, file, isUsedAbove: true));
            }
            else if (canBeTold && Read(file, span) is { } library && !library.Modules.Any(module => asked.Contains(module.Name)))
            {
                _diagnostics.Add(ModuleDiagnostics.UselessUse(span, file, isUsedAbove: false));
            }
        }
    }

    private Library? Read(string file, SourceSpan span)
    {
        if (_read.TryGetValue(file, out Library? library))
        {
            return library;
        }

        if (_reader is null)
        {
            _diagnostics.Add(ModuleDiagnostics.NoLibraries(span, file));
        }

        SourceText? text = _reader?.Invoke(file, span, _diagnostics);
        library = text is null ? null : LibraryParser.Parse(text, _diagnostics);
        AllRead &= library is { IsWhole: true };
        _read.Add(file, library);
        return library;
    }
}
