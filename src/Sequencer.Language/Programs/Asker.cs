using Sequencer.Text;

namespace Sequencer.Language.Programs;

/// <summary>A unit whose steps may ask this one to start.</summary>
public sealed record Asker(string Unit, SourceSpan Span);
