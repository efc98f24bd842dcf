using System.Collections.Immutable;
using Sequencer.Testing;

namespace Sequencer.Spec.Tests.Fuzzing;

/// <summary>What mutation starts from: every program and library of the repository, and those of the documents.</summary>
internal sealed class FuzzCorpus
{
    private FuzzCorpus(ImmutableArray<string> programs, ImmutableArray<string> sound, ImmutableSortedDictionary<string, string> libraries)
    {
        Programs = programs;
        Sound = sound;
        Libraries = libraries;
        Lines = [.. programs.Concat(libraries.Values).SelectMany(text => text.Split('\n')).Where(line => line.Trim().Length > 0).Distinct(StringComparer.Ordinal)];
        Words = [.. programs.Concat(libraries.Values).SelectMany(text => FuzzToken.Of(text).Select(token => token.Text)).Distinct(StringComparer.Ordinal)];
    }

    public static FuzzCorpus OfTheRepository { get; } = Read();

    public ImmutableArray<string> Programs { get; }

    /// <summary>Those without a mistake: what is made from them often means something still.</summary>
    public ImmutableArray<string> Sound { get; }

    /// <summary>By the name that programs use.</summary>
    public ImmutableSortedDictionary<string, string> Libraries { get; }

    public ImmutableArray<string> Lines { get; }

    /// <summary>Every token that any text has.</summary>
    public ImmutableArray<string> Words { get; }

    private static FuzzCorpus Read()
    {
        List<string> programs = [.. Files("*.seq").Select(ReadFile)];
        List<string> sound = [.. Files("*.seq").Where(path => !path.Contains("/Faulty/", StringComparison.Ordinal)).Select(ReadFile)];
        Dictionary<string, string> libraries = new(StringComparer.Ordinal);
        foreach (string file in Files("*.seqlib"))
        {
            libraries.TryAdd("lib/" + Path.GetFileName(file), ReadFile(file));
        }

        foreach (FencedBlock block in Documents.Blocks)
        {
            if (block.Tag.StartsWith("seqlib ", StringComparison.Ordinal))
            {
                libraries.TryAdd(block.Tag.Split(' ')[1], block.Text);
            }
            else if (block.Tag.StartsWith("seq ", StringComparison.Ordinal))
            {
                programs.Add(block.Text);
                if (block.Tag == "seq clean")
                {
                    sound.Add(block.Text);
                }
            }
        }

        Assert.True(programs.Count > 400, $"only {programs.Count} programs were found");
        Assert.NotEmpty(libraries);
        return new FuzzCorpus([.. programs], [.. sound], libraries.ToImmutableSortedDictionary(StringComparer.Ordinal));
    }

    private static IEnumerable<string> Files(string pattern) => new[] { "sequences", "src", "tests" }
        .SelectMany(folder => Directory.EnumerateFiles(RepositoryPath.At(folder), pattern, SearchOption.AllDirectories))
        .Where(path => !path.Contains("/bin/", StringComparison.Ordinal) && !path.Contains("/obj/", StringComparison.Ordinal))
        .Order(StringComparer.Ordinal);

    private static string ReadFile(string path) => File.ReadAllText(path).Replace("\r\n", "\n", StringComparison.Ordinal);
}
