namespace Sequencer.Sites.Tests.Proposing;

/// <summary>The site that <c>sequencer new</c> makes, with words of its program replaced; goes away when disposed of.</summary>
internal sealed class NewPit : IDisposable
{
    public NewPit(params (string Before, string After)[] changes)
    {
        Folder = Path.Combine(Directory.CreateTempSubdirectory("pit-").FullName, "pit");
        Assert.Equal(Outcome.Holds, NewSite.Create(Folder).Outcome);
        string program = File.ReadAllText(Program);
        foreach ((string before, string after) in changes)
        {
            Assert.Contains(before, program, StringComparison.Ordinal);
            program = program.Replace(before, after, StringComparison.Ordinal);
        }

        File.WriteAllText(Program, program);
    }

    public string Folder { get; }

    public string Program => Path.Combine(Folder, "program.seq");

    public void Dispose() => Directory.Delete(Path.GetDirectoryName(Folder)!, recursive: true);
}
