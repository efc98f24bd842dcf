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
    private readonly ImmutableArray<ContactInstrument> _switchContacts;
    private readonly ImmutableArray<ContactInstrument> _handContacts;
    private readonly ImmutableArray<Func<double>> _switched;

    public InstrumentPanel(PlantParts parts, PlantMotion motion, ulong seed)
    {
        _parts = parts;
        _motion = motion;
        PlantModel model = parts.Model;
        _operated = new bool[model.HandSwitches.Length];
        Loops = [.. model.SampleLoops.Select(loop => new SampleLoop(loop, parts.Drive(loop.Pump), parts.Tanks[parts.Tank(loop.From)]))];
        _values = new MeasuredValues(parts, motion, Loops);
        Transmitters = new TransmitterBank(parts, motion, _values, Loops, seed);
        _switched = [.. model.Switches.Select(_values.Of)];
        Switches = [.. model.Switches.Select(described => new ThresholdSwitch(described))];
        _feedbacks = new Feedbacks(parts.Drives, () => motion.Time, Changed);
        _switchContacts = [.. Switches.Select(threshold => new ContactInstrument(threshold.Description.Tag, threshold.Description.NormallyClosed, () => threshold.IsActing, Changed))];
        _handContacts = [.. model.HandSwitches.Select((described, index) => new ContactInstrument(described.Tag, described.NormallyClosed, () => _operated[index], Changed))];
        Contacts = [.. _feedbacks.All, .. _switchContacts, .. _handContacts];
        ReadSwitches();
    }

    public ImmutableArray<SampleLoop> Loops { get; }

    public TransmitterBank Transmitters { get; }

    public ImmutableArray<ThresholdSwitch> Switches { get; }

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
        ReadSwitches();
        _feedbacks.Look();
    }

    private void Changed() => ContactChanges++;

    private void ReadSwitches()
    {
        for (int index = 0; index < Switches.Length; index++)
        {
            if (Switches[index].Advance(_switched[index]()))
            {
                _switchContacts[index].Look();
            }
        }
    }
}
