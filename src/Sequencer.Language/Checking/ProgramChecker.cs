using System.Collections.Immutable;
using Sequencer.Language.Modules;
using Sequencer.Language.Parsing;
using Sequencer.Text;

namespace Sequencer.Language.Checking;

/// <summary>The program of a site that has one only: the whole way from text to a checked program.</summary>
public static class ProgramChecker
{
    /// <summary>The mistakes of a library by itself; those of its use are told with the program that uses it.</summary>
    public static ImmutableArray<Diagnostic> CheckLibrary(SourceText text)
    {
        DiagnosticBag diagnostics = new();
        LibraryParser.Parse(text, diagnostics);
        return diagnostics.InOrder();
    }

    /// <param name="text">The program file.</param>
    /// <param name="scanMilliseconds">The site's scan period, above zero.</param>
    /// <param name="cache">Trees of lines seen before; give the same one again after an edit.</param>
    /// <param name="libraries">Reads the libraries that the program uses; null where it stands alone.</param>
    public static CheckResult Check(SourceText text, int scanMilliseconds, ParseCache? cache = null, LibraryReader? libraries = null) =>
        SiteChecker.Check([text], scanMilliseconds, complete: true, cache, libraries).Files[0];
}
