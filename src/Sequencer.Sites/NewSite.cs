using System.Reflection;
using System.Text;

namespace Sequencer.Sites;

/// <summary>Makes a small site that checks, proves and runs, from the template that is part of the program.</summary>
public static class NewSite
{
    private const string Prefix = "Template/";

    /// <summary>Writes the site into a folder that does not exist yet or is empty.</summary>
    public static SiteResult Create(string folder)
    {
        if (string.IsNullOrWhiteSpace(folder))
        {
            return CommandRun.NotDone("the new site's folder has no name");
        }

        if (File.Exists(folder) || (Directory.Exists(folder) && Directory.EnumerateFileSystemEntries(folder).Any()))
        {
            return CommandRun.NotDone($"`{folder}` is there already and not an empty folder; nothing was written");
        }

        string name = Path.GetFileName(Path.GetFullPath(folder));
        if (name.Length == 0 || name.Any(character => !(char.IsLetterOrDigit(character) || character is '-' or '_' or ' ' or '.')))
        {
            return CommandRun.NotDone($"`{name}` is no name for a site; use letters, digits, `-`, `_`, `.` and spaces");
        }

        try
        {
            Write(folder, name);
        }
        catch (Exception failure) when (failure is IOException or UnauthorizedAccessException)
        {
            return CommandRun.NotDone($"`{folder}` cannot be made: {failure.Message}");
        }

        string text = $"a small site is in {folder}; look at it, then:\n  sequencer verify {folder} --out {folder}/out\n";
        return new SiteResult(Outcome.Holds, [], text, "{}\n", []);
    }

    private static void Write(string folder, string name)
    {
        Assembly assembly = typeof(NewSite).Assembly;
        foreach (string resource in assembly.GetManifestResourceNames().Where(resource => resource.StartsWith(Prefix, StringComparison.Ordinal)).Order(StringComparer.Ordinal))
        {
            using Stream stream = assembly.GetManifestResourceStream(resource)
                ?? throw new InvalidOperationException($"the template {resource} is missing");
            using StreamReader reader = new(stream, Encoding.UTF8);
            string content = reader.ReadToEnd().Replace("name: NAME", $"name: \"{name}\"", StringComparison.Ordinal);
            string target = Path.Combine(folder, resource[Prefix.Length..]);
            Directory.CreateDirectory(Path.GetDirectoryName(target) ?? folder);
            File.WriteAllText(target, content, new UTF8Encoding(false));
        }
    }
}
