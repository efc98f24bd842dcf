using System.Collections.Immutable;

namespace Sequencer.Sites.Descriptions;

/// <summary>What <c>site.yaml</c> says; file names are relative to the site's folder.</summary>
public sealed record SiteDescription(
    string Name,
    string Title,
    string Revision,
    int ScanMilliseconds,
    ImmutableArray<PlacedFile> Programs,
    PlacedFile Plant,
    ImmutableArray<ConsentLimit> Consent,
    ImmutableArray<string> Signs,
    ImmutableArray<Hazard> Hazards);
