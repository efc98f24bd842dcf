using System.Globalization;
using Sequencer.Sites.Stages;

namespace Sequencer.Cli.Commands;

/// <summary>Tells on standard error where long work stands and since when: twice a second at most, in a log every ten seconds.</summary>
internal sealed class ConsoleProgress : IProgress<StageProgress>
{
    private static readonly TimeSpan Pause = Console.IsErrorRedirected ? TimeSpan.FromSeconds(10) : TimeSpan.FromMilliseconds(500);
    private readonly DateTime _begin = DateTime.UtcNow;
    private readonly Lock _gate = new();
    private DateTime _next = DateTime.UtcNow + Pause;

    public void Report(StageProgress value)
    {
        lock (_gate)
        {
            DateTime now = DateTime.UtcNow;
            if (now < _next)
            {
                return;
            }

            _next = now + Pause;
            Console.Error.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{value.Stage}: {value.Words} ({(now - _begin).TotalSeconds:0} s)"));
        }
    }
}
