using System.Collections.Immutable;
using Sequencer.Control.TransitionSystems;
using Sequencer.Text;

namespace Sequencer.Export.Equivalence;

/// <summary>
/// A text that somebody edited, as the reader sees it: a system for each block of ours, in their order; none where there are
/// errors among the diagnostics.
/// </summary>
public sealed record ReadText(SourceText Source, ImmutableArray<TransitionSystem> Systems, ImmutableArray<Diagnostic> Diagnostics);
