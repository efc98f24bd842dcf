namespace Sequencer.Plant.Faults;

/// <summary>Something that can go wrong, and what starting (true) or ending (false) it does at a time.</summary>
internal sealed record Fault(string Name, Action<double, bool> Set);
