namespace Sequencer.Cli;

/// <summary>The entry point: reads the command line and answers with an exit code.</summary>
internal static class CommandLine
{
    private static int Main()
    {
        Console.Error.WriteLine("usage: sequencer COMMAND SITE");
        return 2;
    }
}
