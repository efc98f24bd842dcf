namespace Sequencer.Proof.Satisfiability;

/// <summary>Unwinds an engine whose budget is spent; never leaves the prover, which makes it a verdict.</summary>
internal sealed class BudgetSpentException : Exception
{
    public BudgetSpentException()
    {
    }

    public BudgetSpentException(string message)
        : base(message)
    {
    }

    public BudgetSpentException(string message, Exception innerException)
        : base(message, innerException)
    {
    }
}
