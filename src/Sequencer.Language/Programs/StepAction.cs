using Sequencer.Text;

namespace Sequencer.Language.Programs;

public abstract record StepAction(SourceSpan Span);
