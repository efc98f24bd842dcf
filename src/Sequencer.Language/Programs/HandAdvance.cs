using Sequencer.Text;

namespace Sequencer.Language.Programs;

/// <summary>Who may have the steps wait for a button before each way is taken (IEC 61512-1, semi-automatic mode).</summary>
public sealed record HandAdvance(string Role, SourceSpan Span);
