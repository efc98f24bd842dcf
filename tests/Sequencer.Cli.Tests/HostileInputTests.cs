using System.Text;
using Sequencer.Testing;

namespace Sequencer.Cli.Tests;

/// <summary>
/// Files that are damaged, huge, endless or meant to harm end in a clear message, within a minute of processor time and 2 GiB,
/// with nothing written. Exit 1 where a file of the site is at fault.
/// </summary>
public sealed class HostileInputTests
{
    private const long MostBytes = 2L * 1024 * 1024 * 1024;
    private static readonly TimeSpan LongestRun = TimeSpan.FromSeconds(60);

    [Theory]
    [InlineData("program.seq", "SEQ0120")]
    [InlineData("site.yaml", "SEQ0812")]
    [InlineData("plant.yaml", "SEQ0812")]
    [InlineData("scenarios/normal-batch.yaml", "SEQ0812")]
    public void Empty(string file, string code) => Refused(site => site.Write(file, ""), file, code);

    [Theory]
    [InlineData("program.seq", "SEQ0102")]
    [InlineData("site.yaml", "SEQ0102")]
    [InlineData("plant.yaml", "SEQ0102")]
    public void Ten_megabytes_of_noise(string file, string code) => Refused(site => site.Write(file, Noise(10_000_000)), file, code);

    [Theory]
    [InlineData("program.seq", "SEQ0109")]
    [InlineData("plant.yaml", "SEQ0802")]
    public void Ten_megabytes_of_printable_noise(string file, string code) => Refused(
        site => site.Write(file, Convert.ToBase64String(Noise(7_500_000), Base64FormattingOptions.InsertLineBreaks)), file, code);

    [Theory]
    [InlineData("program.seq")]
    [InlineData("site.yaml")]
    public void Larger_than_the_limit(string file) => Refused(site => site.Write(file, new byte[(16 * 1024 * 1024) + 1]), file, "SEQ0101");

    [Theory]
    [InlineData("program.seq", "SEQ0107")]
    [InlineData("plant.yaml", "SEQ0802")]
    public void Twenty_thousand_nested_brackets(string file, string code) => Refused(
        site => site.Replace(file, file == "plant.yaml" ? "plant: 1" : "never XV1 and LSHH1", Nested(file == "plant.yaml")), file, code);

    [Fact]
    public void Yaml_of_twenty_thousand_levels() => Refused(
        site => site.Write("plant.yaml", string.Concat(Enumerable.Repeat("- ", 20_000)) + "x\n"), "plant.yaml", "SEQ0802");

    [Fact]
    public void Aliases_that_explode() => Refused(
        site => site.Write("site.yaml", string.Concat(Enumerable.Range(0, 30).Select(Level))), "site.yaml", "SEQ08");

    [Fact]
    public void Bytes_that_are_no_text() => Refused(
        site => site.Write("program.seq", [.. Encoding.ASCII.GetBytes("language 1\n"), 0xFF, 0xFE, 0xC0]), "program.seq", "SEQ0102");

    [Fact]
    public void A_zero_byte_in_a_program() => Refused(site => site.Replace("program.seq", "unit PIT1", "unit PI\0T1"), "program.seq", "SEQ0103");

    [Fact]
    public void A_zero_byte_in_a_name_of_a_file() => Refused(site => site.Replace("site.yaml", "[program.seq]", "[\"program\\0.seq\"]"), "site.yaml", "SEQ0902");

    [Theory]
    [InlineData("program.seq", "0 .. 0.800 m3", "0 .. 1e999 m3", "SEQ0113")]
    [InlineData("program.seq", "0 .. 0.800 m3", "0 .. 99999999999999999999999 m3", "SEQ01")]
    [InlineData("plant.yaml", "area: 0.80 m2", "area: 1e999 m2", "SEQ0808")]
    [InlineData("plant.yaml", "area: 0.80 m2", "area: NaN m2", "SEQ08")]
    [InlineData("scenarios/normal-batch.yaml", "lasts: 4 h", "lasts: 1e999 h", "SEQ08")]
    [InlineData("site.yaml", "scan: 100 ms", "scan: -1e999 ms", "SEQ08")]
    public void Numbers_beyond_all_bounds(string file, string old, string with, string code) =>
        Refused(site => site.Replace(file, old, with), file, code);

    [Theory]
    [InlineData("program.seq", "limit 60 min", "limit 60 cubits", "SEQ0302")]
    [InlineData("plant.yaml", "area: 0.80 m2", "area: 0.80 cubits", "SEQ0809")]
    public void A_unit_nobody_knows(string file, string old, string with, string code) =>
        Refused(site => site.Replace(file, old, with), file, code);

    [Fact]
    public void A_file_that_is_missing() => Refused(site => File.Delete(site.At("plant.yaml")), "site.yaml", "SEQ0901");

    [Fact]
    public void A_description_that_is_missing() => Refused(site => File.Delete(site.At("site.yaml")), "site.yaml", "SEQ0901");

    [Theory]
    [InlineData("program.seq")]
    [InlineData("plant.yaml")]
    [InlineData("site.yaml")]
    public void A_folder_where_a_file_is_expected(string file) => Refused(
        site =>
        {
            File.Delete(site.At(file));
            Directory.CreateDirectory(site.At(file));
        },
        "site.yaml",
        "SEQ0903");

    [Theory]
    [InlineData("../pit/program.seq")]
    [InlineData("/etc/hostname")]
    [InlineData("scenarios/../../pit/program.seq")]
    public void A_name_that_leads_outside(string name) => Refused(site => site.Replace("site.yaml", "[program.seq]", $"[{name}]"), "site.yaml", "SEQ0902");

    [Theory]
    [InlineData("/dev/zero")]
    [InlineData("/etc/hostname")]
    public void A_link_that_leads_outside(string target) => Refused(site => Link(site, "program.seq", target), "site.yaml", "SEQ0902");

    [Fact]
    public void A_link_to_a_folder_outside() => Refused(
        site =>
        {
            Directory.Move(site.At("scenarios"), site.Beside("elsewhere"));
            Directory.CreateSymbolicLink(site.At("scenarios"), "../elsewhere");
        },
        "scenarios/normal-batch.yaml",
        "SEQ0902");

    [Fact]
    public void Links_in_a_circle() => Refused(
        site =>
        {
            Link(site, "program.seq", "other.seq");
            File.CreateSymbolicLink(site.At("other.seq"), "program.seq");
        },
        "site.yaml",
        "SEQ0904");

    [Fact]
    public void A_pipe_that_nobody_writes_to() => Refused(
        site =>
        {
            File.Delete(site.At("program.seq"));
            using System.Diagnostics.Process pipe = System.Diagnostics.Process.Start("mkfifo", [site.At("program.seq")]);
            pipe.WaitForExit();
            Assert.Equal(0, pipe.ExitCode);
        },
        "program.seq",
        "SEQ0120");

    [Fact]
    public void A_hundred_thousand_lines_that_are_right()
    {
        using ScratchSite site = new();
        site.Write("program.seq", LongProgram.Of(File.ReadAllText(site.At("program.seq")), 100_000));
        Directory.Delete(site.At("scenarios"), recursive: true);
        ToolRun run = Within(site, "check");
        Assert.True(run.ExitCode == 0, run.Everything[..Math.Min(2000, run.Everything.Length)]);
    }

    private static void Refused(Action<ScratchSite> spoil, string file, string code)
    {
        using ScratchSite site = new();
        spoil(site);
        string results = site.Beside("out");
        ToolRun run = Within(site, "verify", "--out", results);
        Assert.True(run.ExitCode == 1, run.Everything[..Math.Min(2000, run.Everything.Length)]);
        Assert.Contains($"pit/{file}:", run.Output, StringComparison.Ordinal);
        Assert.Contains(code, run.Output, StringComparison.Ordinal);
        Assert.Empty(run.Error);
        Assert.False(Directory.Exists(results));
    }

    private static ToolRun Within(ScratchSite site, string command, params string[] options)
    {
        ToolRun run = ToolRun.Of([command, site.Folder, .. options]);
        Assert.DoesNotContain("   at Sequencer", run.Everything, StringComparison.Ordinal);
        Assert.True(run.ProcessorTime < LongestRun, $"took {run.ProcessorTime}");
        Assert.InRange(run.PeakBytes, 1, MostBytes);
        return run;
    }

    private static byte[] Noise(int length)
    {
        byte[] bytes = new byte[length];
        new Random(1).NextBytes(bytes);
        return bytes;
    }

    private static string Nested(bool yaml) => yaml
        ? $"plant: {new string('[', 20_000)}{new string(']', 20_000)}"
        : $"never {new string('(', 20_000)}XV1{new string(')', 20_000)}";

    private static string Level(int level) => level == 0
        ? "a0: &a0 [x, x, x, x, x, x, x, x, x, x]\n"
        : FormattableString.Invariant($"a{level}: &a{level} [{string.Join(", ", Enumerable.Repeat($"*a{level - 1}", 10))}]\n");

    private static void Link(ScratchSite site, string name, string target)
    {
        File.Delete(site.At(name));
        File.CreateSymbolicLink(site.At(name), target);
    }
}
