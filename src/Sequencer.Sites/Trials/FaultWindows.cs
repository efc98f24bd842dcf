using System.Collections.Immutable;
using Sequencer.Plant.Description;
using Sequencer.Simulation.Records;

namespace Sequencer.Sites.Trials;

/// <summary>
/// When in a run a fault can matter: the times at which its motor or valve is energised in the run without a fault (its own, of
/// its limit switches, of a line's, reagent's or dosing line's pump), and the whole of that run where there is no such time.
/// </summary>
internal sealed class FaultWindows
{
    private readonly ImmutableDictionary<string, ImmutableArray<ScanInterval>> _onTimes;
    private readonly ImmutableDictionary<string, string> _drives;
    private readonly RunRecord _record;

    public FaultWindows(PlantModel plant, RunRecord record)
    {
        _record = record;
        _onTimes = record.Outputs.Where(output => !output.OnTimes.IsEmpty).ToImmutableDictionary(output => output.Output, output => output.OnTimes, StringComparer.Ordinal);
        Dictionary<string, string> drives = new(StringComparer.Ordinal);
        foreach (DriveDescription drive in plant.Drives)
        {
            drives[drive.Tag] = drive.Tag;
            foreach (string contact in new[] { drive.OnSwitch, drive.OffSwitch }.OfType<string>())
            {
                drives[contact] = drive.Tag;
            }
        }

        foreach (LineDescription line in plant.Lines)
        {
            if (line.Through.Where(_onTimes.ContainsKey).OrderBy(drive => _onTimes[drive].Sum(time => time.Scans)).FirstOrDefault() is string scarcest)
            {
                drives[line.Name] = scarcest;
                _ = line.DosingLine is string dosing && drives.TryAdd(dosing, scarcest);
                _ = plant.Reagents.Any(reagent => reagent.Name == line.From) && drives.TryAdd(line.From, scarcest);
            }
        }

        _drives = drives.ToImmutableDictionary(StringComparer.Ordinal);
    }

    /// <summary>Alarms that come without any fault.</summary>
    public ImmutableHashSet<string> OrdinaryAlarms =>
        [.. _record.Events.Where(happened => happened.Kind == RunEventKind.AlarmRaised).Select(happened => happened.Subject)];

    /// <summary>The moment at a share (0 to 1) of the times at which the fault can matter, in seconds, to a tenth.</summary>
    public double Moment(string fault, double share)
    {
        string piece = fault[..fault.LastIndexOf('.')];
        ImmutableArray<ScanInterval> times = _drives.TryGetValue(piece, out string? drive) && _onTimes.TryGetValue(drive, out ImmutableArray<ScanInterval> found)
            ? found
            : [new ScanInterval(0, _record.Scans)];
        double left = share * times.Sum(time => time.Scans);
        foreach (ScanInterval time in times)
        {
            if (left < time.Scans)
            {
                return Math.Floor(_record.SecondsAt(time.From + (long)left) * 10.0) / 10.0;
            }

            left -= time.Scans;
        }

        return Math.Floor(_record.SecondsAt(times[^1].From) * 10.0) / 10.0;
    }
}
