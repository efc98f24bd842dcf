namespace Sequencer.Testing.Pascal;

/// <summary>A value that is handed to or asked of a running block: an expression in Pascal over the members of the block, and how it is sent.</summary>
/// <param name="Name">What it is in a message.</param>
/// <param name="Pascal">For an input the member; for a result any expression.</param>
/// <param name="IsBoolean">One byte, 0 or 1; else four bytes, lowest first.</param>
public sealed record PascalValue(string Name, string Pascal, bool IsBoolean)
{
    internal int Width => IsBoolean ? 1 : 4;
}
