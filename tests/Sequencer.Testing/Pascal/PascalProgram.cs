using System.Collections.Immutable;

namespace Sequencer.Testing.Pascal;

/// <summary>A structured text as Free Pascal: declarations to be put into a program, and the variables of its blocks by the name of the block.</summary>
public sealed record PascalProgram(string Declarations, ImmutableDictionary<string, ImmutableArray<PascalVariable>> Blocks)
{
    /// <summary>A variable of a block, or of an instance in it (<c>TK1.State</c>); null where there is none.</summary>
    public PascalVariable? Find(string block, string path)
    {
        string[] names = path.Split('.');
        PascalVariable? found = null;
        foreach (string name in names)
        {
            found = Blocks.TryGetValue(block, out ImmutableArray<PascalVariable> variables)
                ? variables.FirstOrDefault(variable => string.Equals(variable.Name, name, StringComparison.OrdinalIgnoreCase))
                : null;
            if (found is null)
            {
                return null;
            }

            block = found.Type.Text["v_".Length..];
        }

        return found;
    }
}
