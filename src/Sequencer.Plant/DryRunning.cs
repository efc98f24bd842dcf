using System.Collections.Immutable;
using Sequencer.Plant.Description;
using Sequencer.Plant.Hydraulics;
using Sequencer.Plant.Reaction;

namespace Sequencer.Plant;

/// <summary>Of each line with a pump the seconds that it has turned while what it draws from had nothing to give: a tank at its heel, a store or supply without any.</summary>
internal sealed class DryRunning
{
    /// <summary>L above its heel at which a tank counts as drawn down.</summary>
    private const double AtHeelLitres = 0.01;

    /// <summary>A pump that turns slower than this share of its speed is not hurt by running dry (our own choice).</summary>
    private const double RunningFrom = 0.1;

    private readonly PlantParts _parts;
    private readonly PlantMotion _motion;
    private readonly double[] _seconds;
    private readonly ImmutableArray<(int Volume, double DryBelow, ImmutableArray<int> Lines)> _tanks;
    private readonly ImmutableArray<(Source Source, ImmutableArray<int> Lines)> _sources;

    public DryRunning(PlantParts parts, PlantMotion motion)
    {
        _parts = parts;
        _motion = motion;
        _seconds = new double[parts.Pipes.Length];
        _tanks = [.. Pumped(pipe => pipe.FromTank).Select(lines =>
            (parts.Layout.Volume(lines.Key), parts.Tanks[lines.Key].Description.HeelLitres + AtHeelLitres, lines.ToImmutableArray()))];
        _sources = [.. Pumped(pipe => pipe.FromSource).Select(lines => (parts.Sources[lines.Key], lines.ToImmutableArray()))];
    }

    public bool CanBe(int line) => _parts.Pipes[line] is var pipe && pipe.Drives.Any(drive => drive.Description.Kind == DriveKind.Pump)
        && !_parts.IsKnife(pipe.FromTank) && !_parts.IsKnife(pipe.ToTank);

    public double Seconds(int line) => _seconds[line];

    /// <summary>At each scan, so many seconds after the last: mostly nothing is empty, and no line is looked at.</summary>
    public void Advance(double seconds)
    {
        foreach ((int volume, double dryBelow, ImmutableArray<int> lines) in _tanks)
        {
            if (_motion.Now[volume] < dryBelow)
            {
                Count(lines, seconds);
            }
        }

        foreach ((Source source, ImmutableArray<int> lines) in _sources)
        {
            if (source.IsEmpty)
            {
                Count(lines, seconds);
            }
        }
    }

    private void Count(ImmutableArray<int> lines, double seconds)
    {
        foreach (int line in lines)
        {
            _seconds[line] += _parts.Pipes[line].Opening(_motion.Time) > RunningFrom ? seconds : 0.0;
        }
    }

    private IEnumerable<IGrouping<int, int>> Pumped(Func<Pipe, int> from) =>
        Enumerable.Range(0, _parts.Pipes.Length).Where(line => CanBe(line) && from(_parts.Pipes[line]) >= 0).GroupBy(line => from(_parts.Pipes[line]));
}
