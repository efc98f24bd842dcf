using Sequencer.Plant.Description;
using Sequencer.Plant.Tests.OutsideChecks;
using Sequencer.Testing;
using Sequencer.Text;

namespace Sequencer.Plant.Tests.Runs;

/// <summary>A plant with its terminals by name, and a clock of 100 ms scans, as tests speak of it.</summary>
internal sealed class RunningPlant(IPlant plant)
{
    public const double ScanSeconds = 0.1;

    public IPlant Plant { get; } = plant;

    public static PlantModel Model(string text)
    {
        DiagnosticBag diagnostics = new();
        PlantModel? model = PlantReader.Read(new SourceText("plant.yaml", text), diagnostics);
        Assert.True(model is not null, DiagnosticRenderer.Render(diagnostics.InOrder()));
        return model;
    }

    public static PlantModel Site(string site) => Model(File.ReadAllText(RepositoryPath.Site(site, "plant.yaml")));

    public static RunningPlant Start(PlantModel model, ulong seed = 1)
    {
        Comparison.NotePlay();
        return new RunningPlant(PlantRun.Start(model, seed));
    }

    public double Quantity(string name) => Plant.Quantity(Index(Plant.Quantities.Select(quantity => quantity.Name), name));

    public double Total(string name) => Plant.TotalValue(Index(Plant.Totals.Select(total => total.Name), name));

    public PlantBalances Balances() => Plant.Balances();

    public double Milliamps(string tag) => Plant.Milliamps[Index(Plant.Transmitters.Select(port => port.Tag), tag)];

    /// <summary>What a perfect input card makes of the current, in the unit of the port.</summary>
    public double Reading(string tag)
    {
        TransmitterPort port = Plant.Transmitters.Single(candidate => candidate.Tag == tag);
        return port.Low + ((port.High - port.Low) * (Milliamps(tag) - 4.0) / 16.0);
    }

    public bool Contact(string tag) => Plant.Contact(Index(Plant.Contacts, tag));

    public void Command(bool energised, params string[] tags)
    {
        foreach (string tag in tags)
        {
            Plant.Command(Index(Plant.Actuators, tag), energised);
        }
    }

    public void Inject(string fault) => Plant.Inject(Index(Plant.Faults.Select(named => named.Name), fault));

    public void Clear(string fault) => Plant.Clear(Index(Plant.Faults.Select(named => named.Name), fault));

    public void Run(double seconds)
    {
        long scans = (long)Math.Round(seconds / ScanSeconds);
        for (long scan = 0; scan < scans; scan++)
        {
            Plant.Advance(ScanSeconds);
        }

        Assert.Null(Plant.Failure);
    }

    public bool RunUntil(Func<bool> reached, double limitSeconds)
    {
        for (double passed = 0.0; passed < limitSeconds && !reached(); passed += ScanSeconds)
        {
            Plant.Advance(ScanSeconds);
        }

        Assert.Null(Plant.Failure);
        return reached();
    }

    private static int Index(IEnumerable<string> names, string name)
    {
        int index = names.ToList().IndexOf(name);
        Assert.True(index >= 0, $"no `{name}` among {string.Join(", ", names)}");
        return index;
    }
}
