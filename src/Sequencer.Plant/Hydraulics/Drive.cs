using Sequencer.Plant.Description;

namespace Sequencer.Plant.Hydraulics;

/// <summary>A pump, agitator or valve in motion: its command, what has broken in it, and where it is.</summary>
internal sealed class Drive
{
    /// <summary>A running feedback makes at this share of the speed set (common practice, no source).</summary>
    private const double RunningFrom = 0.9;

    /// <summary>A limit switch makes this close to its end (common practice, no source).</summary>
    private const double LimitSwitchSpan = 0.02;

    /// <summary>How many times slower a valve with the fault "slow" travels; beyond any discrepancy time of 1.5 strokes.</summary>
    private const double SlowFactor = 4.0;

    /// <summary>Slower than this share of full speed a motor with a set speed does not count as running (our own choice).</summary>
    private const double LeastSpeed = 0.05;

    /// <summary>What a leaking valve lets through when it is shut, as a share of its way (our own choice; common practice has some per cent for a worn seat).</summary>
    private const double LeakShare = 0.02;

    /// <summary>s for which a valve that sticks holds where it stands before it breaks loose (our own choice; beyond a discrepancy time of 1.5 short strokes).</summary>
    private const double HoldsSeconds = 15.0;

    private readonly Ramp _motion;
    private readonly Ramp _effect;
    private readonly Ramp _leak;
    private double _restsFrom;
    private double _motionAtRest;
    private double _effectAtRest;
    private double _speed;
    private bool _energised;
    private bool _stuckOn;
    private bool _stuckOff;
    private bool _slow;
    private bool _sticks;

    public Drive(DriveDescription description, double keptSeconds)
    {
        Description = description;
        _motion = new Ramp(description.OpenWhenDeEnergised ? 1.0 : 0.0, keptSeconds);
        _effect = new Ramp(1.0, keptSeconds);
        _leak = new Ramp(0.0, keptSeconds);
        _speed = description.SpeedFrom is null ? 1.0 : 0.0;
        KeepRest();
    }

    public DriveDescription Description { get; }

    /// <summary>True if the command is new.</summary>
    public bool Command(double time, bool energised)
    {
        if (energised == _energised)
        {
            return false;
        }

        _energised = energised;
        Move(time);
        return true;
    }

    /// <summary>Sets the speed as a share of full speed; true if it is new.</summary>
    public bool SetSpeed(double time, double share)
    {
        if (share == _speed)
        {
            return false;
        }

        _speed = share;
        Changed?.Invoke();
        Move(time);
        return true;
    }

    /// <summary>Runs or stays open whatever the command.</summary>
    public void StickOn(double time, bool stuck)
    {
        _stuckOn = stuck;
        Move(time);
    }

    /// <summary>Does not start, or stays closed, whatever the command.</summary>
    public void StickOff(double time, bool stuck)
    {
        _stuckOff = stuck;
        Move(time);
    }

    public void Slow(double time, bool slow)
    {
        _slow = slow;
        double target = _motion.Target;
        _motion.MoveTo(time, target, TravelSeconds);
        KeepRest();
    }

    /// <summary>Shuts, but lets some through.</summary>
    public void Leak(double time, bool leaks)
    {
        _leak.MoveTo(time, leaks ? LeakShare : 0.0, Ramp.AtOnce);
        KeepRest();
    }

    /// <summary>Holds for a while before it moves.</summary>
    public void Stick(bool sticks) => _sticks = sticks;

    /// <summary>Turns, but does nothing: a blocked pump, a broken shaft.</summary>
    public void LoseEffect(double time, bool lost)
    {
        _effect.MoveTo(time, lost ? 0.0 : 1.0, Ramp.AtOnce);
        KeepRest();
    }

    /// <summary>Share of full speed, or of full travel.</summary>
    public double Motion(double time) => time >= _restsFrom ? _motionAtRest : _motion.Value(time);

    /// <summary>What reaches the liquid, 0 to 1.</summary>
    public double Effect(double time) => time >= _restsFrom ? _effectAtRest : Math.Max(_motion.Value(time) * _effect.Value(time), _leak.Value(time));

    /// <summary>From then on it stands or runs evenly, unless it is changed.</summary>
    public double RestsFrom => _restsFrom;

    /// <summary>Something in it moves from now on, or is set.</summary>
    public event Action? Changed;

    public double NextKink(double time) => Math.Min(_leak.NextKink(time), Math.Min(_motion.NextKink(time), _effect.NextKink(time)));

    public bool OnSwitch(double time) =>
        Motion(time) >= (Description.Kind == DriveKind.Valve ? 1.0 - LimitSwitchSpan : RunningFrom * Math.Max(LeastSpeed, _speed));

    public bool OffSwitch(double time) => Motion(time) <= LimitSwitchSpan;

    private double TravelSeconds => Description.TravelSeconds * (_slow ? SlowFactor : 1.0);

    private void Move(double time)
    {
        bool commanded = _energised != Description.OpenWhenDeEnergised;
        double target = _stuckOff ? 0.0 : _stuckOn || commanded ? _speed : 0.0;
        if (target != _motion.Target)
        {
            _motion.MoveTo(_sticks ? time + HoldsSeconds : time, target, TravelSeconds);
            KeepRest();
        }
    }

    /// <summary>What it comes to when nothing in it moves any more: drives are asked in each scan and mostly stand or run.</summary>
    private void KeepRest()
    {
        _restsFrom = Math.Max(_motion.RestsFrom, Math.Max(_effect.RestsFrom, _leak.RestsFrom));
        _motionAtRest = _motion.Target;
        _effectAtRest = Math.Max(_motion.Target * _effect.Target, _leak.Target);
        Changed?.Invoke();
    }
}
