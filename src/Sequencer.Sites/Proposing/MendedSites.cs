using System.Collections.Immutable;
using Sequencer.Language.Checking;
using Sequencer.Language.Parsing;
using Sequencer.Text;

namespace Sequencer.Sites.Proposing;

/// <summary>The site with an addition in one of its programs, read, checked and lowered like any other.</summary>
internal sealed class MendedSites
{
    private readonly LoadedSite _site;
    private readonly ParseCache _cache = new();
    private readonly ImmutableHashSet<(string Code, string Message)> _known;

    public MendedSites(LoadedSite site)
    {
        _site = site;
        _known = [.. Check(site.Texts).Diagnostics.Select(one => (one.Code, one.Message))];
    }

    /// <summary>The site, and the warnings that it has and the site as it is has not; null where the addition is a mistake.</summary>
    public (LoadedSite Site, ImmutableArray<Diagnostic> Warnings)? With(Candidate candidate)
    {
        if (candidate.Mended() is not { } mended)
        {
            return null;
        }

        ImmutableArray<SourceText> texts = [.. _site.Texts.Select(text => text.Path == mended.Path ? mended : text)];
        SiteCheckResult result = Check(texts);
        return result.Units.Length == texts.Length && result.Diagnostics.All(one => one.Severity != Severity.Error)
            ? (SiteLoader.WithPrograms(_site, texts, result.Units), [.. result.Diagnostics.Where(one => !_known.Contains((one.Code, one.Message)))])
            : null;
    }

    private SiteCheckResult Check(ImmutableArray<SourceText> texts) =>
        SiteChecker.Check(texts, _site.Description.ScanMilliseconds, cache: _cache, libraries: _site.Libraries);
}
