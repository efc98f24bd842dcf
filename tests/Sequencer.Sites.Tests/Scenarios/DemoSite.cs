using Sequencer.Control.TransitionSystems;
using Sequencer.Simulation.Metadata;
using Sequencer.Simulation.Running;
using Sequencer.Simulation.Scenarios;
using Sequencer.Sites.Folders;
using Sequencer.Sites.Scenarios;
using Sequencer.Testing;
using Sequencer.Text;

namespace Sequencer.Sites.Tests.Scenarios;

/// <summary>A demo site of the repository, ready to play scenarios.</summary>
internal sealed class DemoSite
{
    private readonly string _folder;
    private readonly LoadedSite _site;

    public DemoSite(string folder)
    {
        _folder = folder;
        DiagnosticBag diagnostics = new();
        _site = SiteLoader.Load(new SiteFolder(RepositoryPath.Site(folder)), diagnostics)
            ?? throw new InvalidOperationException(DiagnosticRenderer.Render(diagnostics.InOrder()));
        Assert.Equal("", DiagnosticRenderer.Render(diagnostics.InOrder()));
        Player = new ScenarioPlayer(_site.System, Metadata, _site.Plant);
    }

    public TransitionSystem System => _site.System;

    public SiteMetadata Metadata => _site.Metadata;

    public ScenarioPlayer Player { get; }

    /// <summary>The scenario of that file, with its recipe.</summary>
    public Scenario Scenario(string file)
    {
        DiagnosticBag diagnostics = new();
        SourceText text = new(file, File.ReadAllText(RepositoryPath.Site(_folder, "scenarios", file + ".yaml")));
        string? name = ScenarioReader.Read(text, diagnostics)?.Name;
        return _site.Scenarios.Single(scenario => scenario.Name == name);
    }

    /// <summary>With the scenario's own seed, or another.</summary>
    public ScenarioResult Play(string file, int? seed = null)
    {
        DiagnosticBag diagnostics = new();
        Scenario scenario = Scenario(file);
        ScenarioResult? result = Player.Play(scenario with { Seed = seed ?? scenario.Seed }, diagnostics, null, CancellationToken.None);
        Assert.Equal("", DiagnosticRenderer.Render(diagnostics.InOrder().Where(diagnostic => diagnostic.Severity == Severity.Error)));
        return result ?? throw new InvalidOperationException($"no run of {file} and no diagnostic");
    }
}
