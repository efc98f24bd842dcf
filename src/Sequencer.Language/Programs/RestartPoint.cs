using Sequencer.Text;

namespace Sequencer.Language.Programs;

/// <summary>Where the procedure goes on when the unit is restarted in this step; the step itself begins anew.</summary>
public sealed record RestartPoint(int Step, SourceSpan Span);
