using System.Text.RegularExpressions;
using Sequencer.Testing;

namespace Sequencer.Sites.Tests.Variants;

/// <summary>
/// A demo site's folder, copied with another program in it; removed at the end. Where the site has several units the copy may have
/// the broken one alone, with the instruments that it reads and the scenarios that speak of no other: a requirement of a unit
/// that reads nothing of the others leans on that unit only, and to prove all others again for every broken line buys nothing.
/// </summary>
internal sealed partial class BrokenSite : IDisposable
{
    private const string Description = "site.yaml";
    private const string Plant = "plant.yaml";

    private readonly string _path = Directory.CreateTempSubdirectory("variant").FullName;

    public BrokenSite(string folder, string programFile, string program, bool alone)
    {
        string original = RepositoryPath.Site(folder);
        foreach (string file in Directory.EnumerateFiles(original, "*", SearchOption.AllDirectories))
        {
            string copy = Path.Combine(_path, Path.GetRelativePath(original, file));
            Directory.CreateDirectory(Path.GetDirectoryName(copy)!);
            File.Copy(file, copy);
        }

        string[] programs = [.. Directory.EnumerateFiles(_path, "*.seq").Select(file => Path.GetFileName(file))];
        if (alone && programs.Length > 1)
        {
            LeaveAlone(programFile, [.. programs.Where(file => file != programFile)]);
        }

        File.WriteAllText(Path.Combine(_path, programFile), program);
    }

    public Folders.SiteFolder Folder => new(_path);

    public void Dispose() => Directory.Delete(_path, recursive: true);

    private void LeaveAlone(string programFile, string[] others)
    {
        string unit = UnitOf(programFile);
        string[] otherUnits = [.. others.Select(UnitOf)];
        string[] read = [.. Tag().Matches(Read(programFile)).Select(match => match.Groups[1].Value)];
        Array.ForEach(others, file => File.Delete(Path.Combine(_path, file)));
        File.Delete(Path.Combine(_path, "trials.yaml"));

        // The hazards name requirements of all units, and the consent what the others let out.
        string requirements = string.Join(", ", Requirement().Matches(Read(programFile)).Select(match => match.Groups[1].Value));
        Rewrite(Description, text => ProgramList().Replace(Lists().Replace(text, ""), $"programs: [{programFile}]")
            + $"hazards: [{{id: HZ1, text: All hazards of the unit, met_by: [{requirements}]}}]\n");
        Rewrite(Plant, text => Feedback().Replace(Instrument().Replace(text, IfRead), IfRead));
        foreach (string path in Directory.EnumerateFiles(Path.Combine(_path, "scenarios")))
        {
            string scenario = File.ReadAllText(path);
            if (otherUnits.Any(other => scenario.Contains(other, StringComparison.Ordinal)))
            {
                File.Delete(path);
            }
            else
            {
                File.WriteAllText(path, AlarmOfUnit().Replace(scenario, "alarm: "));
            }
        }

        string own = RepositoryPath.At("tests", "Sequencer.Sites.Tests", "Variants", "Alone", unit + ".yaml");
        if (File.Exists(own))
        {
            File.Copy(own, Path.Combine(_path, "scenarios", "normal-alone.yaml"));
        }

        string IfRead(Match instrument) => read.Contains(instrument.Groups[1].Value) ? instrument.Value : "";
    }

    private string UnitOf(string file) => UnitHead().Match(Read(file)).Groups[1].Value;

    private string Read(string file) => File.ReadAllText(Path.Combine(_path, file));

    private void Rewrite(string file, Func<string, string> change) => File.WriteAllText(Path.Combine(_path, file), change(Read(file)));

    [GeneratedRegex(@"^unit (\w+)", RegexOptions.Multiline)]
    private static partial Regex UnitHead();

    [GeneratedRegex(@"^input (\w+)", RegexOptions.Multiline)]
    private static partial Regex Tag();

    [GeneratedRegex(@"^require (\w+)", RegexOptions.Multiline)]
    private static partial Regex Requirement();

    [GeneratedRegex(@"^programs: .*$", RegexOptions.Multiline)]
    private static partial Regex ProgramList();

    /// <summary>A list of the site's description with its lines.</summary>
    [GeneratedRegex(@"^(consent|hazards):\n(  .*\n)*", RegexOptions.Multiline)]
    private static partial Regex Lists();

    /// <summary>In a site of several units a protection's alarm is called by its unit.</summary>
    [GeneratedRegex(@"alarm: \w+\.(?=[A-Z]\d)")]
    private static partial Regex AlarmOfUnit();

    /// <summary>The contact of a drive.</summary>
    [GeneratedRegex(@", (?:running|open_switch|closed_switch): (\w+)")]
    private static partial Regex Feedback();

    /// <summary>A transmitter, a switch or a hand switch, on a line of its own.</summary>
    [GeneratedRegex(@"^  (\w+): \{(?:measures|normally_closed).*\n", RegexOptions.Multiline)]
    private static partial Regex Instrument();
}
