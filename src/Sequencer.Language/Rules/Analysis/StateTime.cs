using Sequencer.Language.Programs;

namespace Sequencer.Language.Rules.Analysis;

/// <summary>How long a unit is in a state with steps.</summary>
/// <param name="State">Running, or the state of a section.</param>
/// <param name="Most">Milliseconds, until it is over or a limit has ended it, where nothing holds it meanwhile; null where there is no bound.</param>
/// <param name="Unbounded">Why there is none.</param>
/// <param name="Expected">Milliseconds: the sum of what steps say they are expected to take, along the longest way forward.</param>
/// <param name="Unsaid">Steps that do not say it.</param>
public sealed record StateTime(ProceduralState State, long? Most, string? Unbounded, long Expected, int Unsaid);
