using Sequencer.Simulation.Loop;

namespace Sequencer.Simulation.Running;

/// <summary>Sees one event become true: the condition of an event, bound to places in a loop.</summary>
internal sealed class EventWatch(Func<ClosedLoop, bool> condition, int occurrence, double delaySeconds)
{
    private int _seen;
    private bool _before;
    private double? _due;

    /// <summary>Whether the moment has come, in this scan or before it.</summary>
    public bool HasCome { get; private set; }

    /// <summary>When it became true, without the delay; null before that.</summary>
    public double? CameSeconds => _due - delaySeconds;

    public void Observe(ClosedLoop loop)
    {
        if (HasCome)
        {
            return;
        }

        if (_due is null)
        {
            bool now = condition(loop);
            if (now && !_before && ++_seen == occurrence)
            {
                _due = loop.Seconds + delaySeconds;
            }

            _before = now;
        }

        HasCome = _due is double due && loop.Seconds >= due - Tolerance;
    }

    /// <summary>Far less than a scan: keeps rounding from moving an action to the next scan.</summary>
    private const double Tolerance = 1e-6;
}
