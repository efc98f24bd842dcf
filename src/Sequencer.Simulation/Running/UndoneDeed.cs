using Sequencer.Text;

namespace Sequencer.Simulation.Running;

/// <summary>A scripted action whose moment never came, in words, and where it is written.</summary>
public sealed record UndoneDeed(string Words, SourceSpan Span);
