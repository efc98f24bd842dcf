using Sequencer.Text;

namespace Sequencer.Language.Programs;

/// <summary>A step asks another unit to start; the request stands while the step is active.</summary>
public sealed record Ask(string Unit, SourceSpan Span);
