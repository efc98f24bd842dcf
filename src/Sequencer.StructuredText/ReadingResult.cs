using System.Collections.Immutable;
using Sequencer.Control.TransitionSystems;
using Sequencer.Text;

namespace Sequencer.StructuredText;

/// <summary>The system, or null where a diagnostic says why there is none.</summary>
public sealed record ReadingResult(TransitionSystem? System, ImmutableArray<Diagnostic> Diagnostics)
{
    /// <summary>The address in the controller of each input and output that has one (<c>%IX0.1</c>), by its name in the system.</summary>
    public ImmutableDictionary<string, string> Addresses { get; init; } = ImmutableDictionary<string, string>.Empty;
}
