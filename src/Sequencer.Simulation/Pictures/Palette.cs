using Sequencer.Simulation.Loop;

namespace Sequencer.Simulation.Pictures;

/// <summary>
/// The colours of the trend picture, ours: curves, bars and alarms differ in lightness too, so that a
/// grey print still tells them apart; a state's colour is always written out in words beside it.
/// </summary>
internal static class Palette
{
    public static Colour Paper { get; } = new(255, 255, 255);

    public static Colour Ink { get; } = new(28, 36, 44);

    public static Colour Faint { get; } = new(108, 118, 126);

    public static Colour Grid { get; } = new(228, 231, 232);

    public static Colour Frame { get; } = new(150, 158, 164);

    public static Colour Curve { get; } = new(18, 58, 104);

    public static Colour Mark { get; } = new(178, 98, 16);

    public static Colour Bar { get; } = new(104, 170, 166);

    public static Colour Reagent { get; } = new(116, 64, 138);

    public static Colour Alarm { get; } = new(168, 32, 44);

    public static Colour Action { get; } = new(40, 96, 48);

    public static Colour NoPower { get; } = new(206, 206, 210);

    public static Colour BadChannel { get; } = new(246, 218, 214);

    public static Colour Step { get; } = new(238, 242, 238);

    public static Colour StepOther { get; } = new(214, 224, 220);

    public static Colour State(UnitState state) => state switch
    {
        UnitState.Idle => new(242, 242, 240),
        UnitState.Running => new(188, 220, 200),
        UnitState.Complete => new(134, 180, 156),
        UnitState.Holding => new(246, 220, 160),
        UnitState.Held => new(232, 184, 84),
        UnitState.Restarting => new(206, 222, 240),
        UnitState.Stopping => new(226, 196, 184),
        UnitState.Stopped => new(202, 158, 142),
        UnitState.Aborting => new(224, 140, 128),
        _ => new(198, 96, 88),
    };
}
