namespace Sequencer.Plant.Reaction;

/// <summary>
/// Where each number of the plant's state stands in one array. Of a tank: volume (L), heat (L times
/// degrees Celsius), contents mixed in, contents that are still on their way (dead time) and contents
/// that are being mixed in; then what it has lost over its rim (L). Of a dosing line: its contents.
/// Then what has passed each line (L). Of a drum: its vacuum (Pa), its filtrate so far (L), the filter aid and the other dry solids (g) and the water (L)
/// that its knife has taken, the water in the pores of what it holds (L), and what it holds. Of a tank in which solids
/// settle: the clear water (L), the solids in flocs (g), their size (m) and what lies on the floor. Of a filter press: the water in it (L), its filtrate so
/// far (L), the dry solids (g) and the water (L) that have fallen out of it, and what it holds. Of seal water: its temperature (C). Then what has come from and gone outside.
/// From the first leak on what has leaked out of each tank (L) follows at the end.
/// </summary>
internal sealed class StateLayout(int tanks, int dosingLines, int lines, int drums, int settlers, int presses, int sealWaters, int contents)
{
    private readonly int _perTank = 3 + (3 * contents);
    private readonly int _perSettler = 3 + contents;
    private readonly int _perDrum = 6 + contents;
    private readonly int _perPress = 4 + contents;

    public int Count => LeaksStart + (FollowsLeaks ? tanks : 0);

    /// <summary>A tank has begun to leak: until then there is no place for what leaks, and a plant that is tight pays nothing for it.</summary>
    public bool FollowsLeaks { get; set; }

    public int Contents => contents;

    public int Volume(int tank) => tank * _perTank;

    public int Heat(int tank) => (tank * _perTank) + 1;

    /// <summary>Litres lost over the rim.</summary>
    public int Overflowed(int tank) => (tank * _perTank) + 2;

    /// <summary>First of the contents mixed in.</summary>
    public int Mixed(int tank) => (tank * _perTank) + 3;

    /// <summary>First of the contents that are still within the dead time.</summary>
    public int OnTheWay(int tank) => (tank * _perTank) + 3 + contents;

    /// <summary>First of the contents that are being mixed in.</summary>
    public int Mixing(int tank) => (tank * _perTank) + 3 + (2 * contents);

    /// <summary>First of the contents of a dosing line.</summary>
    public int DosingLine(int line) => (tanks * _perTank) + (line * contents);

    /// <summary>Litres that have passed a line.</summary>
    public int Passed(int line) => (tanks * _perTank) + (dosingLines * contents) + line;

    /// <summary>Pascals below the air's pressure.</summary>
    public int Vacuum(int drum) => DrumStart + (drum * _perDrum);

    /// <summary>Litres of filtrate.</summary>
    public int Filtered(int drum) => Vacuum(drum) + 1;

    /// <summary>Grams of filter aid that the knife has taken; those of other solids follow, then litres of water.</summary>
    public int Skimmed(int drum) => Vacuum(drum) + 2;

    /// <summary>Litres of water in the pores of coat and cake.</summary>
    public int Pores(int drum) => Vacuum(drum) + 5;

    /// <summary>First of the contents on the drum.</summary>
    public int Held(int drum) => Vacuum(drum) + 6;

    /// <summary>Of the settling of a tank: litres of clear water above what settles.</summary>
    public int Clear(int settler) => SettlerStart + (settler * _perSettler);

    /// <summary>Grams of solids in flocs.</summary>
    public int Flocs(int settler) => Clear(settler) + 1;

    /// <summary>Metres; how large they are.</summary>
    public int FlocSize(int settler) => Clear(settler) + 2;

    /// <summary>First of the contents that lie on the floor.</summary>
    public int Bed(int settler) => Clear(settler) + 3;

    /// <summary>Litres of water in a filter press.</summary>
    public int PressWater(int press) => PressStart + (press * _perPress);

    /// <summary>Litres of filtrate.</summary>
    public int PressFiltered(int press) => PressWater(press) + 1;

    /// <summary>Grams of dry solids that have fallen out; litres of water follow.</summary>
    public int PressDropped(int press) => PressWater(press) + 2;

    /// <summary>First of the contents in a filter press.</summary>
    public int PressHeld(int press) => PressWater(press) + 4;

    /// <summary>Degrees Celsius.</summary>
    public int SealWater(int water) => SealWaterStart + water;

    /// <summary>Litres that came from outside; the contents that came follow.</summary>
    public int CameIn => BoundaryStart;

    /// <summary>Litres that went outside; the contents that went follow.</summary>
    public int WentOut => BoundaryStart + contents + 1;

    /// <summary>Litres that have leaked out of a tank; only where <see cref="FollowsLeaks"/>.</summary>
    public int Leaked(int tank) => LeaksStart + tank;

    private int DrumStart => (tanks * _perTank) + (dosingLines * contents) + lines;

    private int SettlerStart => DrumStart + (drums * _perDrum);

    private int PressStart => SettlerStart + (settlers * _perSettler);

    private int SealWaterStart => PressStart + (presses * _perPress);

    private int BoundaryStart => SealWaterStart + sealWaters;

    private int LeaksStart => BoundaryStart + (2 * (contents + 1));
}
