using Sequencer.Sites;
using Sequencer.Text;

namespace Sequencer.Cli.Commands;

/// <summary>Prints what a command found and turns it into the exit code.</summary>
internal static class Answer
{
    /// <summary>Diagnostics and text to standard output, or JSON alone.</summary>
    public static int Print(SiteResult result, bool json)
    {
        if (json)
        {
            Console.Out.Write(result.Json);
            return (int)result.Outcome;
        }

        if (result.Outcome == Outcome.NotDone)
        {
            Console.Error.Write(result.Text);
            return (int)result.Outcome;
        }

        Console.Out.Write(result.Before);
        if (!result.Diagnostics.IsEmpty)
        {
            Console.Out.WriteLine(DiagnosticRenderer.Render(result.Diagnostics));
        }

        Console.Out.Write(result.Text);
        return (int)result.Outcome;
    }
}
