namespace Sequencer.Plant.Faults;

/// <summary>Something that can go wrong with a piece, and what starting (true) or ending (false) it does at a time.</summary>
internal sealed record Fault(string Piece, string Mode, Action<double, bool> Set, FaultKind Kind = FaultKind.Failure)
{
    public NamedFault Named => new(Piece, Mode, Kind);
}
