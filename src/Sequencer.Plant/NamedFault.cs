namespace Sequencer.Plant;

/// <summary>What can go wrong with a piece of a plant, by its tag or name.</summary>
public sealed record NamedFault(string Piece, string Mode, FaultKind Kind)
{
    /// <summary>As scenarios write it: <c>AT201.frozen</c>.</summary>
    public string Name => $"{Piece}.{Mode}";
}
