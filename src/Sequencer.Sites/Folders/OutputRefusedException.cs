namespace Sequencer.Sites.Folders;

/// <summary>Results cannot go where the user asked; the message says why, for the user.</summary>
public sealed class OutputRefusedException : Exception
{
    public OutputRefusedException(string message)
        : base(message)
    {
    }

    public OutputRefusedException()
    {
    }

    public OutputRefusedException(string message, Exception innerException)
        : base(message, innerException)
    {
    }
}
