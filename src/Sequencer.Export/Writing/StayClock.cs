using Sequencer.Language.Programs;

namespace Sequencer.Export.Writing;

/// <summary>A counter of scans that a condition of a step has lasted.</summary>
internal sealed record StayClock(string Name, long Limit, Step Step);
