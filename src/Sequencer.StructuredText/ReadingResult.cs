using System.Collections.Immutable;
using Sequencer.Control.TransitionSystems;
using Sequencer.Text;

namespace Sequencer.StructuredText;

/// <summary>The system, or null where a diagnostic says why there is none.</summary>
public sealed record ReadingResult(TransitionSystem? System, ImmutableArray<Diagnostic> Diagnostics);
