using Sequencer.Control.TransitionSystems;
using Sequencer.Language.Checking;
using Sequencer.Language.Programs;
using Sequencer.Lowering;
using Sequencer.Plant.Description;
using Sequencer.Simulation.Metadata;
using Sequencer.Simulation.Running;
using Sequencer.Simulation.Scenarios;
using Sequencer.Sites.Scenarios;
using Sequencer.Testing;
using Sequencer.Text;

namespace Sequencer.Sites.Tests.Scenarios;

/// <summary>A demo site of the repository, ready to play scenarios.</summary>
internal sealed class DemoSite
{
    private const int ScanMilliseconds = 100;

    private readonly string _folder;

    public DemoSite(string folder, string program)
    {
        _folder = folder;
        DiagnosticBag diagnostics = new();
        CheckResult checkedProgram = ProgramChecker.Check(Text(program), ScanMilliseconds);
        diagnostics.AddRange(checkedProgram.Diagnostics);
        PlantModel? plant = PlantReader.Read(Text("plant.yaml"), diagnostics);
        if (diagnostics.HasErrors || checkedProgram.Program is null || plant is null)
        {
            throw new InvalidOperationException(DiagnosticRenderer.Render(diagnostics.InOrder()));
        }

        SiteProgram programs = new(folder, ScanMilliseconds, [checkedProgram.Program]);
        TransitionSystem system = SiteLowering.Lower(programs);
        Metadata = SimulationMetadata.Of(programs, MeaningHash.Of(system), []);
        Player = new ScenarioPlayer(system, Metadata, plant);
    }

    public SiteMetadata Metadata { get; }

    public ScenarioPlayer Player { get; }

    public Scenario Scenario(string name)
    {
        DiagnosticBag diagnostics = new();
        Scenario? scenario = ScenarioReader.Read(Text($"scenarios/{name}.yaml"), diagnostics);
        Assert.Equal("", DiagnosticRenderer.Render(diagnostics.InOrder()));
        return scenario ?? throw new InvalidOperationException($"no scenario {name} and no diagnostic");
    }

    public ScenarioResult Play(string name)
    {
        DiagnosticBag diagnostics = new();
        ScenarioResult? result = Player.Play(Scenario(name), diagnostics, null, CancellationToken.None);
        Assert.Equal("", DiagnosticRenderer.Render(diagnostics.InOrder().Where(diagnostic => diagnostic.Severity == Severity.Error)));
        return result ?? throw new InvalidOperationException($"no run of {name} and no diagnostic");
    }

    private SourceText Text(string file) => new($"sequences/{_folder}/{file}", File.ReadAllText(RepositoryPath.At("sequences", _folder, file)));
}
