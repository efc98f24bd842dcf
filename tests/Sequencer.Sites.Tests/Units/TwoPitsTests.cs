using Sequencer.Sites.Stages;
using Sequencer.Testing;

namespace Sequencer.Sites.Tests.Units;

/// <summary>Two pits like the one that a new site begins with, on one plant: the second reads the first one's emergency stop and waits for it.</summary>
public sealed class TwoPitsTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("pits-").FullName;

    public TwoPitsTests()
    {
        string template = RepositoryPath.At("src", "Sequencer.Sites", "Template");
        string program = File.ReadAllText(Path.Combine(template, "program.seq"));
        string second = string.Join('\n', Second(program).Split('\n').Where(line => !(line.StartsWith("input", StringComparison.Ordinal) && line.Contains(" ES2 ", StringComparison.Ordinal))))
            .Replace("when ES2", "when PIT1.ES1", StringComparison.Ordinal)
            .Replace("after ES2", "after PIT1.ES1", StringComparison.Ordinal)
            .Replace("\nprocedure", "\nstart only when PIT1 is Complete \"The first pit is not done\"\n\nprocedure", StringComparison.Ordinal);
        Write("first.seq", program);
        Write("second.seq", second);
        Write("plant.yaml", Plant(File.ReadAllText(Path.Combine(template, "plant.yaml"))));
        string site = File.ReadAllText(Path.Combine(template, "site.yaml")).Replace("NAME", "Pits", StringComparison.Ordinal)
            .Replace("[program.seq]", "[first.seq, second.seq]", StringComparison.Ordinal);
        for (int requirement = 1; requirement <= 5; requirement++)
        {
            site = site.Replace($"met_by: [H{requirement}]", $"met_by: [PIT1.H{requirement}, PIT2.H{requirement}]", StringComparison.Ordinal);
        }

        Write("site.yaml", site);
        Directory.CreateDirectory(Path.Combine(_folder, "scenarios"));
        Write("scenarios/normal.yaml", """
            scenario: 1
            name: normal batch
            purpose: One pit after the other; the second refuses to start before the first is done.
            lasts: 6 h
            until: {unit: PIT2, state: Complete, after: 1 min}
            actions:
              - {at: 5 s, press: PIT1.start}
              - {at: 10 s, press: PIT2.start}
              - {when: {unit: PIT1, state: Complete, after: 1 min}, press: PIT2.start}
            expect:
              - {unit: PIT1, passes: ["10", "20", "30"]}
              - {unit: PIT2, passes: ["10", "20", "30"]}
              - {unit: PIT2, ends: Complete}
              - {alarm: PIT2.start2, raised: yes}
              - {value: PIT2.overflowed, at_most: 0 L, judged: at_end}

            """);
    }

    [Fact]
    public void Two_units_check_prove_run_and_are_exported_as_one_program()
    {
        string output = Path.Combine(_folder, "out");

        SiteResult result = SiteCommands.Verify(_folder, output, ExportSettings.Default, ProofSettings.Default, new Progress<StageProgress>(), CancellationToken.None);

        Assert.True(result.Outcome == Outcome.Holds, result.Text);
        Assert.Empty(result.Diagnostics);
        string report = File.ReadAllText(Directory.GetFiles(output, "*report*.md", SearchOption.AllDirectories)[0]);
        Assert.Contains("PIT1", report, StringComparison.Ordinal);
        Assert.Contains("PIT2", report, StringComparison.Ordinal);
        Assert.Contains("UNITS_TOGETHER", File.ReadAllText(Directory.GetFiles(output, "*.st")[0]), StringComparison.Ordinal);
        Assert.True(File.Exists(Path.Combine(output, "certificates", "PIT2.H5.smt2")));
        Assert.True(File.Exists(Path.Combine(output, "certificates", "export-all-units.smt2")));
    }

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    private static string Second(string text) => text.Replace("PIT1", "PIT2", StringComparison.Ordinal)
        .Replace("%IW0", "%IW10", StringComparison.Ordinal).Replace("%IW2", "%IW12", StringComparison.Ordinal)
        .Replace("%IX0", "%IX1", StringComparison.Ordinal).Replace("%QX0", "%QX1", StringComparison.Ordinal)
        .Replace("LT1", "LT2", StringComparison.Ordinal).Replace("AT1", "AT2", StringComparison.Ordinal)
        .Replace("LSHH1", "LSHH2", StringComparison.Ordinal).Replace("ES1", "ES2", StringComparison.Ordinal)
        .Replace("YS1", "YS2", StringComparison.Ordinal).Replace("AG1", "AG2", StringComparison.Ordinal)
        .Replace("XV2", "XV4", StringComparison.Ordinal).Replace("XV1", "XV3", StringComparison.Ordinal)
        .Replace("P1 ", "P2 ", StringComparison.Ordinal).Replace("P1.", "P2.", StringComparison.Ordinal);

    /// <summary>Everything that belongs to the pit twice, the lines to and from it under names of their own.</summary>
    private static string Plant(string text)
    {
        List<string> lines = [];
        foreach (string line in text.Split('\n'))
        {
            lines.Add(line);
            bool isOfThePit = line.StartsWith("  ", StringComparison.Ordinal) && !line.Contains('#', StringComparison.Ordinal) && !line.Contains("ES1", StringComparison.Ordinal)
                && (line.StartsWith("  P1:", StringComparison.Ordinal) || line.Contains("XV", StringComparison.Ordinal) || line.Contains("PIT1,", StringComparison.Ordinal)
                    || line.Contains("in: PIT1", StringComparison.Ordinal) || line.StartsWith("  AG1:", StringComparison.Ordinal) || line.StartsWith("  caustic:", StringComparison.Ordinal));
            if (isOfThePit)
            {
                lines.Add(Second(line).Replace("P1]", "P2]", StringComparison.Ordinal).Replace("P1:", "P2:", StringComparison.Ordinal)
                    .Replace("  inlet:", "  inlet2:", StringComparison.Ordinal).Replace("  caustic:", "  caustic2:", StringComparison.Ordinal)
                    .Replace("  outlet:", "  outlet2:", StringComparison.Ordinal));
            }
        }

        string all = string.Join('\n', lines);
        int start = all.IndexOf("  PIT1:\n", StringComparison.Ordinal);
        int end = all.IndexOf("pumps:", StringComparison.Ordinal);
        string tank = all[start..end];
        return all[..end] + Second(tank) + all[end..];
    }

    private void Write(string file, string text) => File.WriteAllText(Path.Combine(_folder, file), text);
}
