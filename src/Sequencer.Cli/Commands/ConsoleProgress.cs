using Sequencer.Sites.Stages;

namespace Sequencer.Cli.Commands;

/// <summary>Tells on standard error where long work stands, at most twice a second; silent where nobody watches.</summary>
internal sealed class ConsoleProgress : IProgress<StageProgress>
{
    private static readonly TimeSpan Pause = TimeSpan.FromMilliseconds(500);
    private readonly Lock _gate = new();
    private DateTime _next = DateTime.UtcNow + Pause;

    public void Report(StageProgress value)
    {
        lock (_gate)
        {
            if (Console.IsErrorRedirected || DateTime.UtcNow < _next)
            {
                return;
            }

            _next = DateTime.UtcNow + Pause;
            Console.Error.WriteLine($"{value.Stage}: {value.Words}");
        }
    }
}
