using System.Collections.Immutable;
using Sequencer.Plant.Description;
using Sequencer.Plant.Hydraulics;

namespace Sequencer.Plant.Reaction;

/// <summary>The running pieces made from a description, their references resolved, in the order of the description.</summary>
internal sealed class PlantParts
{
    private readonly ImmutableArray<int[]> _linesFrom;

    public PlantParts(PlantModel model)
    {
        Model = model;
        Contents = new ContentLayout(model);
        double kept = 2.0 * model.Tanks.Select(tank => tank.Mixing.DeadTimeSeconds).DefaultIfEmpty(0.0).Max();
        KeptSeconds = kept;
        Drives = [.. model.Drives.Select(drive => new Drive(drive, kept))];
        Tanks = [.. model.Tanks.Select((tank, index) => new TankBody(tank, tank.Mixing.Agitator is { } tag ? Drive(tag) : null, tank.Aeration is { } air ? new Blower(air, [.. air.Blowers.Select(Drive)]) : null, index))];
        Sources = [.. model.Supplies.Select(supply => Supply(supply, kept)), .. model.Reagents.Select(reagent => Reagent(reagent, kept))];
        DosingLines = [.. model.DosingLines.Select(line => new DosingLine(line, kept))];
        Pipes = [.. model.Lines.Select(Pipe)];
        _linesFrom = [.. Sources.Select((_, source) => Enumerable.Range(0, Pipes.Length).Where(line => Pipes[line].FromSource == source).ToArray())];
        Layout = new StateLayout(Tanks.Length, DosingLines.Length, Pipes.Length, model.Drums.Length, model.Tanks.Count(tank => tank.Settling is not null), model.Presses.Length, model.Drums.Count(drum => drum.SealWater is not null), Contents.Count);
        Solubility = new Solubility(Tanks.Length, Contents.Count);
        Settlers = [.. Tanks.Where(tank => tank.Description.Settling is not null)
            .Select((tank, index) => new TankSettling(tank.Description.Settling!, tank, index, Contents, Layout, Solubility))];
        Drums = [.. model.Drums.Select((drum, index) => new DrumFilter(
            drum, index, Contents, Layout, Solubility, Tanks[Tank(drum.Trough)], Tanks[Tank(drum.FiltrateTo)], Tanks[Tank(drum.Knife)], Drive(drum.TurnedBy), Drive(drum.VacuumBy), SealWater(drum, index)))];
        SealWaters = [.. Drums.Select(drum => drum.SealWater).OfType<SealWater>()];
        Presses = [.. model.Presses.Select((press, index) => new FilterPress(press, index, this, Tanks[Tank(press.From)], Tanks[Tank(press.FiltrateTo)]))];
        Separators = [.. Drums, .. Presses];
    }

    public PlantModel Model { get; }

    /// <summary>How long the past of what drives the flows is kept: dead times ask for it.</summary>
    public double KeptSeconds { get; }

    public ContentLayout Contents { get; }

    public ImmutableArray<Drive> Drives { get; }

    public ImmutableArray<TankBody> Tanks { get; }

    /// <summary>Supplies, then reagents.</summary>
    public ImmutableArray<Source> Sources { get; }

    public ImmutableArray<DosingLine> DosingLines { get; }

    public ImmutableArray<Pipe> Pipes { get; }

    public ImmutableArray<DrumFilter> Drums { get; }

    /// <summary>Those of drums' vacuum pumps.</summary>
    public ImmutableArray<SealWater> SealWaters { get; }

    public ImmutableArray<FilterPress> Presses { get; }

    /// <summary>Drums, then presses.</summary>
    public ImmutableArray<ISeparator> Separators { get; }

    /// <summary>The tanks in which solids settle.</summary>
    public ImmutableArray<TankSettling> Settlers { get; }

    public StateLayout Layout { get; }

    /// <summary>Of what filters and settlers hold, in each tank; the motion tells it.</summary>
    public Solubility Solubility { get; }

    public Drive Drive(string tag) => Drives[IndexOf(Model.Drives, drive => drive.Tag, tag)];

    public int Tank(string name) => IndexOf(Model.Tanks, tank => tank.Name, name);

    public int Source(string name) => IndexOf(Sources, source => source.Name, name);

    public int Line(string name) => IndexOf(Model.Lines, line => line.Name, name);

    /// <summary>The settling in a tank; -1 where none is described.</summary>
    public int Settler(int tank)
    {
        for (int settler = 0; settler < Settlers.Length; settler++)
        {
            if (Settlers[settler].Tank == tank)
            {
                return settler;
            }
        }

        return -1;
    }

    /// <summary>Litres that the lines from a source have drawn.</summary>
    public double DrawnLitres(int source, ReadOnlySpan<double> state)
    {
        double litres = 0.0;
        foreach (int line in _linesFrom[source])
        {
            litres += state[Layout.Passed(line)];
        }

        return litres;
    }

    /// <summary>Litres left in a reagent's store; a supply never ends.</summary>
    public double StoreLitres(int source, ReadOnlySpan<double> state) =>
        (Sources[source].Reagent?.StoreLitres ?? double.PositiveInfinity) - DrawnLitres(source, state);

    /// <summary>Litres that have leaked out of a tank.</summary>
    public double LeakedLitres(int tank, ReadOnlySpan<double> state) => Layout.FollowsLeaks ? state[Layout.Leaked(tank)] : 0.0;

    /// <summary>mol of lime that a dosing line holds when it is full of slurry.</summary>
    public double SlurryInFullLine(int dosingLine)
    {
        double strongest = Pipes
            .Where(pipe => pipe.DosingLine == dosingLine)
            .Select(pipe => Sources[pipe.FromSource].Reagent?.LimeMolPerLitre ?? 0.0)
            .DefaultIfEmpty(0.0)
            .Max();
        return strongest * DosingLines[dosingLine].Description.HoldsLitres;
    }

    /// <summary>Contents of all tanks at the start, nothing in the dosing lines but water.</summary>
    public double[] InitialState()
    {
        double[] state = new double[Layout.Count];
        foreach (TankBody tank in Tanks)
        {
            double litres = tank.Description.StartLitres;
            Source water = Sources[Source(tank.Description.StartWater)];
            state[Layout.Volume(tank.Index)] = litres;
            state[Layout.Heat(tank.Index)] = litres * water.Celsius;
            for (int content = 0; content < Contents.Count; content++)
            {
                state[Layout.Mixed(tank.Index) + content] = litres * water.Content[content];
            }
        }

        for (int settler = 0; settler < Settlers.Length; settler++)
        {
            state[Layout.FlocSize(settler)] = TankSettling.StartSize;
        }

        for (int water = 0; water < SealWaters.Length; water++)
        {
            state[Layout.SealWater(water)] = Model.AmbientCelsius;
        }

        return state;
    }

    /// <summary>A tank whose level stands for the place of a knife holds no water.</summary>
    public bool IsKnife(int tank) => tank >= 0 && Drums.Any(drum => drum.Description.Knife == Tanks[tank].Description.Name);

    private static int IndexOf<T>(ImmutableArray<T> items, Func<T, string> nameOf, string name)
    {
        for (int index = 0; index < items.Length; index++)
        {
            if (string.Equals(nameOf(items[index]), name, StringComparison.Ordinal))
            {
                return index;
            }
        }

        return -1;
    }

    private Source Supply(SupplyDescription supply, double kept)
    {
        WaterChemistry chemistry = new(Contents, Model.Precipitates);
        double[] content = WaterBalance.Compose(supply, Contents, chemistry, out string reason)
            ?? throw new InvalidOperationException($"the reader has checked the water {supply.Name}: {reason}");
        double[] solid = [.. content.Select((amount, place) => place < Contents.Lime && chemistry.CanBeSolid(place) ? amount - chemistry.Dissolved(place) : amount)];
        return new Source(supply.Name, content, solid, supply.Celsius, null, kept);
    }

    private Source Reagent(ReagentDescription reagent, double kept)
    {
        double[] content = new double[Contents.Count];
        Contents.Add(content, reagent.Dissolved);
        content[Contents.Lime] = reagent.LimeMolPerLitre;
        if (Contents.FilterAid >= 0)
        {
            content[Contents.FilterAid] = reagent.FilterAidGramsPerLitre;
        }

        double[] solid = [.. content];
        solid.AsSpan(0, Contents.Lime).Clear();
        return new Source(reagent.Name, content, solid, reagent.Celsius, reagent, kept);
    }

    private SealWater? SealWater(DrumDescription drum, int index) => drum.SealWater is not { } water ? null : new SealWater(
        water,
        Layout.SealWater(Model.Drums.Take(index).Count(earlier => earlier.SealWater is not null)),
        Sources[Source(water.CoolingWater)].Celsius,
        Drive(drum.VacuumBy),
        [.. water.CoolingThrough.Select(Drive)]);

    private Pipe Pipe(LineDescription line)
    {
        int source = Source(line.From);
        int toTank = Tank(line.To);
        bool isDosed = toTank >= 0 && source >= 0 && (Sources[source].Reagent is not null || line.DosingLine is not null);
        return new Pipe(
            line,
            [.. line.Through.Select(Drive)],
            [.. line.NotThrough.Select(Drive)],
            Tank(line.From),
            source,
            toTank,
            line.DosingLine is { } dosingLine ? IndexOf(Model.DosingLines, described => described.Name, dosingLine) : -1,
            isDosed ? Tanks[toTank].Description.Mixing.DeadTimeSeconds : 0.0)
        {
            IsDosed = isDosed,
        };
    }
}
