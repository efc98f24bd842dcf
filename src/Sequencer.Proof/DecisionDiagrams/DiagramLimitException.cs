namespace Sequencer.Proof.DecisionDiagrams;

/// <summary>Unwinds the diagram engine where a limit is reached, with the limit in words; never leaves it.</summary>
internal sealed class DiagramLimitException : Exception
{
    public DiagramLimitException()
    {
    }

    public DiagramLimitException(string message)
        : base(message)
    {
    }

    public DiagramLimitException(string message, Exception innerException)
        : base(message, innerException)
    {
    }
}
