using System.Collections.Immutable;
using Sequencer.Testing;

namespace Sequencer.Sites.Tests.Variants;

/// <summary>A demo site's program and all that the operators make of it.</summary>
internal sealed class VariantSite
{
    public VariantSite(string folder, string programFile)
    {
        Folder = folder;
        ProgramFile = programFile;
        Program = File.ReadAllText(RepositoryPath.Site(folder, programFile)).Replace("\r\n", "\n", StringComparison.Ordinal);
        Variants = [.. ProgramLine.Of(Program).SelectMany(line => Broken(Program, line))];
    }

    public string Folder { get; }

    public string ProgramFile { get; }

    /// <summary>The unbroken text.</summary>
    public string Program { get; }

    public ImmutableArray<Variant> Variants { get; }

    private static IEnumerable<Variant> Broken(string program, ProgramLine line)
    {
        foreach (VariantOperator way in VariantOperators.All)
        {
            foreach (BrokenLine broken in way.Breaks(line))
            {
                List<string> lines = [.. program.Split('\n')];
                if (broken.Text is null)
                {
                    lines.RemoveAt(line.Number - 1);
                }
                else
                {
                    lines[line.Number - 1] = broken.Text;
                }

                yield return new Variant(line.Subject, way.Name, broken.Change, line.Number, string.Join('\n', lines));
            }
        }
    }
}
