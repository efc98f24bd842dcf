using System.Collections.Immutable;
using Sequencer.Plant.Description;
using Sequencer.Plant.Reaction;

namespace Sequencer.Plant.Instruments;

/// <summary>All instruments of a plant, read once after each move of it.</summary>
internal sealed class InstrumentPanel
{
    private readonly PlantParts _parts;
    private readonly PlantMotion _motion;
    private readonly bool[] _operated;
    private readonly Feedbacks _feedbacks;
    private readonly MeasuredValues _values;
    private readonly SwitchTurns _turns;
    private readonly ImmutableArray<ContactInstrument> _handContacts;
    private readonly ImmutableArray<(ThresholdSwitch Switch, Func<double> Value)> _scanned;

    public InstrumentPanel(PlantParts parts, PlantMotion motion, ulong seed)
    {
        _parts = parts;
        _motion = motion;
        PlantModel model = parts.Model;
        _operated = new bool[model.HandSwitches.Length];
        Loops = [.. model.SampleLoops.Select(loop => new SampleLoop(loop, parts.Drive(loop.Pump), parts.Tanks[parts.Tank(loop.From)]))];
        _values = new MeasuredValues(parts, motion, Loops, motion.Present);
        Transmitters = new TransmitterBank(parts, motion, _values, Loops, seed);
        ImmutableArray<ThresholdSwitch> switches = [.. model.Switches.Select(described => new ThresholdSwitch(described))];
        ImmutableArray<ThresholdSwitch> carried = [.. switches.Where(one => MeasuredValues.IsCarried(one.Description, Loops))];
        Instant looked = new(parts.InitialState());
        MeasuredValues within = new(parts, motion, Loops, looked);
        _turns = new SwitchTurns(motion, carried, [.. carried.Select(one => within.Of(one.Description))], looked);
        _scanned = [.. switches.Except(carried).Select(one => (one, _values.Of(one.Description)))];
        _feedbacks = new Feedbacks(parts.Drives, () => motion.Time, Changed);
        _handContacts = [.. model.HandSwitches.Select((described, index) => new ContactInstrument(described.Tag, described.NormallyClosed, () => _operated[index], Changed))];
        Contacts = [.. _feedbacks.All, .. switches.Select(Contact), .. _handContacts];
        ScanSwitches();
    }

    public ImmutableArray<SampleLoop> Loops { get; }

    public TransmitterBank Transmitters { get; }

    /// <summary>Running and limit-switch feedbacks, then switches, then hand switches.</summary>
    public ImmutableArray<ContactInstrument> Contacts { get; }

    /// <summary>Grows whenever a contact may have turned.</summary>
    public long ContactChanges { get; private set; }

    public void Operate(int handSwitch, bool operated)
    {
        _operated[handSwitch] = operated;
        _handContacts[handSwitch].Look();
    }

    /// <summary>Reads everything at the motion's time, that many seconds after the last reading.</summary>
    public void Advance(double seconds)
    {
        foreach (SampleLoop loop in Loops)
        {
            loop.Advance(_motion.Time, seconds, _motion.Now[_parts.Layout.Volume(loop.Tank.Index)]);
        }

        foreach (MarkedShaft shaft in _values.Shafts)
        {
            shaft.Advance(_motion.Time, seconds);
        }

        Transmitters.Advance(seconds);
        _turns.Advance(_motion.Time);
        ScanSwitches();
        _feedbacks.Look();
    }

    private void Changed() => ContactChanges++;

    private ContactInstrument Contact(ThresholdSwitch threshold)
    {
        ContactInstrument contact = new(threshold.Description.Tag, threshold.Description.NormallyClosed, () => threshold.IsActing, Changed);
        threshold.Turned += contact.Look;
        return contact;
    }

    /// <summary>Those that follow no state of the equations.</summary>
    private void ScanSwitches()
    {
        foreach ((ThresholdSwitch threshold, Func<double> value) in _scanned)
        {
            if (threshold.BeyondTurn(value(), threshold.IsActing) >= 0.0)
            {
                threshold.Turn();
            }
        }
    }
}
