using System.Collections.Immutable;

namespace Sequencer.Lowering.Supposing;

/// <summary>
/// What is supposed of a site that is not so, to ask what would follow from it. The meaning of everything else stays as it is,
/// so a question about a supposition is answered by the engines that answer all others.
/// </summary>
public sealed record Supposition
{
    public static Supposition Nothing { get; } = new();

    /// <summary>Names of protections (<see cref="ProtectionList"/>) that are taken out of the program.</summary>
    public ImmutableHashSet<string> Absent { get; init; } = [];

    /// <summary>
    /// Each protection acts only in scans in which an input of its own says so, and that it always does is an assumption of its
    /// name: what a verdict names among its assumptions is then what it leans on.
    /// </summary>
    public bool ProtectionsAreAssumed { get; init; }

    /// <summary>An instrument or a device that may fail at any time; requirements then speak of the plant as it is.</summary>
    public Failure? Failure { get; init; }

    /// <summary>In place of each requirement stand denials of what it speaks of: where one fails, that happens.</summary>
    public bool RequirementsAskWhatHappens { get; init; }
}
