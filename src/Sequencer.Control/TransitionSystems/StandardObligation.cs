namespace Sequencer.Control.TransitionSystems;

/// <summary>
/// What every unit owes without being asked, of which a requirement is one case: the unit, and the obligation in words that go
/// for all its cases (<c>each step ends within its limit</c>).
/// </summary>
public sealed record StandardObligation(string Unit, string Words);
