using System.CommandLine;
using System.CommandLine.Invocation;
using Sequencer.Cli.Commands;
using Sequencer.Sites;

namespace Sequencer.Cli;

/// <summary>
/// The entry point: reads the command line and answers with an exit code. 0 everything asked holds,
/// 1 mistakes or something fails, 2 could not be done, 3 nothing fails but something is undecided,
/// 70 a defect of ours.
/// </summary>
internal static class CommandLine
{
    private const int OwnFault = 70;

    private static int Main(string[] arguments)
    {
        RootCommand root = new("Checks, proves, simulates and exports batch step programs for effluent treatment plants.")
        {
            VerifyCommand.Create(),
            CheckCommand.Create(),
            FormatCommand.Create(),
            ProveCommand.Create(),
            SimulateCommand.Create(),
            TrialsCommand.Create(),
            ExportCommand.Create(),
            DoseCommand.Create(),
            TuneCommand.Create(),
            NewCommand.Create(),
        };
        ParseResult parsed = root.Parse(arguments);
        try
        {
            return parsed.Action is ParseErrorAction
                ? BadUsage.Explain(parsed)
                : parsed.Invoke(new InvocationConfiguration { EnableDefaultExceptionHandler = false });
        }
        catch (OperationCanceledException)
        {
            Console.Error.WriteLine("stopped before it was finished; nothing was written");
            return (int)Outcome.NotDone;
        }
        catch (Exception fault) when (fault is not OutOfMemoryException)
        {
            Console.Error.WriteLine($"internal error: {fault.GetType().Name}: {fault.Message}");
            Console.Error.WriteLine("This is a defect of the tool, not of your site. Please report it with the command and the site's folder.");
            return OwnFault;
        }
    }
}
