using System.Collections.Immutable;
using Sequencer.Plant.Description;
using Sequencer.Plant.Hydraulics;
using Sequencer.Plant.Instruments;
using Sequencer.Plant.Reaction;

namespace Sequencer.Plant.Faults;

/// <summary>Every failure mode of every piece of a plant, named <c>TAG.mode</c>.</summary>
internal static class FaultCatalogue
{
    private const double HalfStrength = 0.5;
    private const double DoubleStrength = 2.0;

    private static readonly ImmutableArray<(string Name, TransmitterFault Fault)> TransmitterModes =
    [
        ("frozen", TransmitterFault.Frozen),
        ("stuck-low", TransmitterFault.StuckLow),
        ("stuck-high", TransmitterFault.StuckHigh),
        ("drift", TransmitterFault.Drift),
        ("misscaled", TransmitterFault.Misscaled),
        ("failed", TransmitterFault.Failed),
        ("wire-break", TransmitterFault.WireBreak),
    ];

    public static ImmutableArray<Fault> Of(PlantParts parts, PlantMotion motion, InstrumentPanel panel) =>
    [
        .. parts.Drives.SelectMany(OfDrive),
        .. parts.Sources.Where(source => source.Reagent is not null).SelectMany(OfReagent),
        .. parts.Pipes.SelectMany(OfLevelControl),
        .. parts.DosingLines.Select(line => new Fault(line.Description.Name, "blocked", line.Block)),
        .. parts.Drums.Select(drum => new Fault(drum.Description.Name, "cracked", (_, on) => drum.Crack(on))),
        .. parts.SealWaters.SelectMany(OfSealWater),
        .. parts.Presses.SelectMany(OfPress),
        .. panel.Loops.Select(loop => new Fault(loop.Description.Name, "blocked", (_, on) => loop.Block(on))),
        .. panel.Transmitters.Instruments.SelectMany((transmitter, index) => OfTransmitter(transmitter.Description, index, panel.Transmitters)),
        .. panel.Transmitters.Instruments.Where(transmitter => transmitter.Description.SwappedWith is not null).Select(transmitter => OfPair(transmitter.Description, panel.Transmitters)),
        .. panel.Contacts.SelectMany(OfContact),
        .. parts.Model.HandSwitches.Select((hand, index) => new Fault(hand.Tag, "operated", (_, on) => panel.Operate(index, on), FaultKind.Hand)),
        .. parts.Tanks.Where(tank => !parts.IsKnife(tank.Index)).Select(tank => new Fault(tank.Description.Name, "leaks", (_, on) => motion.Leak(tank, on))),
        .. parts.Sources.Where(source => source.Reagent is null && IsDrawnOn(source, parts)).Select(source => OfSupply(source, parts)),
        .. parts.Pipes.Where(pipe => CanBlock(pipe, parts)).Select(pipe => new Fault(pipe.Description.Name, "blocked", (time, on) => pipe.Block(time, on, parts.KeptSeconds))),
    ];

    private static bool IsDrawnOn(Source supply, PlantParts parts) =>
        parts.Model.Lines.Any(line => line.From == supply.Name) || parts.SealWaters.Any(water => water.Description.CoolingWater == supply.Name);

    private static Fault OfSupply(Source supply, PlantParts parts) => new(supply.Name, "lost", (time, on) =>
    {
        supply.Empty(time, on);
        foreach (SealWater water in parts.SealWaters.Where(water => water.Description.CoolingWater == supply.Name))
        {
            water.LoseCoolingWater(time, on);
        }
    });

    /// <summary>A line through a dosing line blocks there; one to or from a knife's place is no line.</summary>
    private static bool CanBlock(Pipe pipe, PlantParts parts) => pipe.DosingLine < 0 && !parts.IsKnife(pipe.FromTank) && !parts.IsKnife(pipe.ToTank);

    private static IEnumerable<Fault> OfDrive(Drive drive)
    {
        string tag = drive.Description.Tag;
        if (drive.Description.Kind == DriveKind.Valve)
        {
            yield return new Fault(tag, "stuck-open", drive.StickOn);
            yield return new Fault(tag, "stuck-closed", drive.StickOff);
            yield return new Fault(tag, "slow", drive.Slow);
            yield return new Fault(tag, "leaks", drive.Leak);
            yield return new Fault(tag, "sticks", (_, on) => drive.Stick(on));
            yield break;
        }

        yield return new Fault(tag, "fails-to-start", drive.StickOff);
        yield return new Fault(tag, "keeps-running", drive.StickOn);
        string noEffect = drive.Description.Kind switch
        {
            DriveKind.Pump => "no-flow",
            DriveKind.Feeder => "bridged",
            _ => "broken",
        };
        yield return new Fault(tag, noEffect, drive.LoseEffect);
    }

    private static IEnumerable<Fault> OfReagent(Source source)
    {
        yield return new Fault(source.Name, "empty", source.Empty);
        yield return new Fault(source.Name, "half-strength", (time, on) => source.ChangeStrength(time, on ? HalfStrength : 1.0));
        yield return new Fault(source.Name, "double-strength", (time, on) => source.ChangeStrength(time, on ? DoubleStrength : 1.0));
    }

    private static IEnumerable<Fault> OfLevelControl(Pipe pipe)
    {
        if (pipe.ByLevel is { } control)
        {
            yield return new Fault(pipe.Description.Name, "float-open", (_, on) => control.StickOpen(on));
            yield return new Fault(pipe.Description.Name, "float-shut", (_, on) => control.StickShut(on));
        }
    }

    private static IEnumerable<Fault> OfSealWater(SealWater water)
    {
        string name = water.Description.Name;
        yield return new Fault(name, "lost", water.Lose);
        yield return new Fault(name, "uncooled", water.StopCooling);
        yield return new Fault(name, "fouled", water.Foul);
    }

    private static IEnumerable<Fault> OfPress(FilterPress press)
    {
        string tag = press.Description.Name;
        yield return new Fault(tag, "torn", (_, on) => press.Tear(on));
        yield return new Fault(tag, "blinded", (_, on) => press.Blind(on));
        if (press.Description.Squeeze is not null)
        {
            yield return new Fault(tag, "burst", (_, on) => press.Burst(on));
        }
    }

    private static IEnumerable<Fault> OfTransmitter(TransmitterDescription described, int transmitter, TransmitterBank bank)
    {
        foreach ((string name, TransmitterFault fault) in TransmitterModes)
        {
            yield return new Fault(described.Tag, name, (_, on) => bank.Fail(transmitter, fault, on));
        }

        if (described.LagSeconds > 0.0)
        {
            yield return new Fault(described.Tag, "fouled", (_, on) => bank.Fail(transmitter, TransmitterFault.Fouled, on));
        }
    }

    private static Fault OfPair(TransmitterDescription described, TransmitterBank bank) =>
        new(described.Tag, "swapped", (_, on) => bank.Swap(described.Tag, described.SwappedWith ?? described.Tag, on));

    private static IEnumerable<Fault> OfContact(ContactInstrument contact)
    {
        yield return new Fault(contact.Tag, "stuck-made", (_, on) => contact.StickMade(on));
        yield return new Fault(contact.Tag, "wire-break", (_, on) => contact.BreakWire(on));
    }
}
