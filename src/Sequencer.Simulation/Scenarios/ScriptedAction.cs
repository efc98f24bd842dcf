using Sequencer.Text;

namespace Sequencer.Simulation.Scenarios;

/// <summary>One thing that is done or happens, once, when its moment has come.</summary>
public sealed record ScriptedAction(Moment Moment, Deed Deed, SourceSpan Span);
