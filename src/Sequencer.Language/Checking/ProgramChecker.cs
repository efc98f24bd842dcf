using Sequencer.Language.Parsing;
using Sequencer.Text;

namespace Sequencer.Language.Checking;

/// <summary>The program of a site that has one only: the whole way from text to a checked program.</summary>
public static class ProgramChecker
{
    /// <param name="text">The program file.</param>
    /// <param name="scanMilliseconds">The site's scan period, above zero.</param>
    /// <param name="cache">Trees of lines seen before; give the same one again after an edit.</param>
    public static CheckResult Check(SourceText text, int scanMilliseconds, ParseCache? cache = null) =>
        SiteChecker.Check([text], scanMilliseconds, complete: true, cache).Files[0];
}
