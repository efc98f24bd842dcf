using Sequencer.Simulation.Loop;

namespace Sequencer.Simulation.Records;

/// <summary>Follows an output's on-times.</summary>
internal sealed class OutputTracker(string output, int place)
{
    /// <summary>More pulses than this in one run are counted, not kept: a chattering output must not fill the memory.</summary>
    private const int MostOnTimes = 20_000;

    private readonly List<ScanInterval> _onTimes = [];
    private long _onScans;
    private long _pulses;
    private long _onSince = -1;

    public bool On => _onSince >= 0;

    /// <summary>To be called where outputs changed. True where this one turned in this scan.</summary>
    public bool Observe(ClosedLoop loop)
    {
        bool on = loop.OutputOn(place);
        if (on == On)
        {
            return false;
        }

        if (on)
        {
            _pulses++;
            _onSince = loop.ScanNumber;
        }
        else
        {
            Keep(loop.ScanNumber);
        }

        return true;
    }

    public OutputTally Finish(long scans)
    {
        if (On)
        {
            Keep(scans);
        }

        return new OutputTally(output, _onScans, _pulses, [.. _onTimes]);
    }

    private void Keep(long until)
    {
        _onScans += until - _onSince;
        if (_onTimes.Count < MostOnTimes)
        {
            _onTimes.Add(new ScanInterval(_onSince, until));
        }

        _onSince = -1;
    }
}
