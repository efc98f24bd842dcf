using System.Text.Json.Nodes;

namespace Sequencer.Cli.Tests;

/// <summary>With <c>--json</c> standard output is one JSON object with a schema version, however the run ends.</summary>
public sealed class JsonTests
{
    [Fact]
    public void Every_ending_is_json_with_the_schema_and_the_outcome()
    {
        using ScratchSite site = new();
        using ScratchSite broken = new();
        broken.Replace("program.seq", "open XV1", "open XV9");
        (string Outcome, string[] Arguments)[] runs =
        [
            ("Holds", ["check", site.Folder]),
            ("Holds", ["prove", site.Folder]),
            ("Holds", ["export", site.Folder, "--out", site.Beside("export")]),
            ("Holds", ["simulate", site.Folder, "--out", site.Beside("simulate")]),
            ("Fails", ["check", broken.Folder]),
            ("NotDone", ["check", site.Beside("nowhere")]),
            ("NotDone", ["export", site.Folder, "--out", site.At("site.yaml")]),
        ];
        foreach ((string outcome, string[] arguments) in runs)
        {
            JsonObject json = ToolRun.Of([.. arguments, "--json"]).Json;
            Assert.Equal(1, json["schema"]?.GetValue<int>());
            Assert.Equal(outcome, json["outcome"]?.GetValue<string>());
        }
    }

    [Fact]
    public void A_mistake_has_its_place_in_json()
    {
        using ScratchSite site = new();
        site.Replace("program.seq", "open XV1", "open XV9");
        JsonNode? first = ToolRun.Of("check", site.Folder, "--json").Json["check"]?["diagnostics"]?[0];
        Assert.Equal("SEQ0201", first?["code"]?.GetValue<string>());
        Assert.Equal(42, first?["line"]?.GetValue<int>());
        Assert.Equal(10, first?["column"]?.GetValue<int>());
        Assert.EndsWith("pit/program.seq", first?["file"]?.GetValue<string>(), StringComparison.Ordinal);
    }
}
