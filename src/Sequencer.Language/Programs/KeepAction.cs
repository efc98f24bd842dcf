using Sequencer.Text;

namespace Sequencer.Language.Programs;

/// <summary>
/// Stored action: demanded from the entry of its step until the step <see cref="Until"/> is entered or the batch
/// ends, however it ends (qualifiers S and R of IEC 61131-3, from memory).
/// </summary>
public sealed record KeepAction(Output Output, bool On, int Until, SourceSpan Span) : StepAction(Span);
