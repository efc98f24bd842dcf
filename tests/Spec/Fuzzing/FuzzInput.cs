using System.Collections.Immutable;
using System.Text;

namespace Sequencer.Spec.Tests.Fuzzing;

/// <summary>The programs of a made-up site, and the libraries that they may use, by name.</summary>
internal sealed record FuzzInput(ImmutableArray<string> Programs, ImmutableSortedDictionary<string, string> Libraries)
{
    private const string Divider = "=====";

    /// <summary>Every text, the libraries behind the programs.</summary>
    public ImmutableArray<string> Texts => [.. Programs, .. Libraries.Values];

    public FuzzInput WithText(int index, string text) => index < Programs.Length
        ? this with { Programs = Programs.SetItem(index, text) }
        : this with { Libraries = Libraries.SetItem(Libraries.Keys.ElementAt(index - Programs.Length), text) };

    /// <summary>As one file: each part under a line that says whether it is a program or a library, and the library's name.</summary>
    public string Write()
    {
        StringBuilder text = new();
        foreach (string program in Programs)
        {
            text.Append(Divider).Append(" program\n").Append(program).Append('\n');
        }

        foreach ((string name, string library) in Libraries)
        {
            text.Append(Divider).Append(' ').Append(name).Append('\n').Append(library).Append('\n');
        }

        return text.ToString();
    }

    public static FuzzInput Read(string text)
    {
        FuzzInput input = new([], ImmutableSortedDictionary.Create<string, string>(StringComparer.Ordinal));
        foreach (string part in ("\n" + text).Split('\n' + Divider + ' ', StringSplitOptions.RemoveEmptyEntries))
        {
            int end = part.IndexOf('\n', StringComparison.Ordinal);
            string content = part[(end + 1)..].TrimEnd('\n') + "\n";
            input = part[..end] == "program"
                ? input with { Programs = input.Programs.Add(content) }
                : input with { Libraries = input.Libraries.Add(part[..end], content) };
        }

        return input;
    }
}
