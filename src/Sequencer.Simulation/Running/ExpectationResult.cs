using Sequencer.Simulation.Scenarios;

namespace Sequencer.Simulation.Running;

/// <summary>
/// Whether an expectation came true: what was expected and what was seen, in words with values, and
/// the scan that decided it (null where only the whole run decides).
/// </summary>
public sealed record ExpectationResult(Expectation Expectation, bool Passed, string Expected, string Seen, long? Scan);
