namespace Sequencer.Sites.Folders;

/// <summary>Writes a file to a neighbour first, then renames it: whoever reads meanwhile sees the old file or the new one, whole.</summary>
internal static class WholeFile
{
    /// <exception cref="IOException">It cannot be written.</exception>
    /// <exception cref="UnauthorizedAccessException">It may not be written.</exception>
    public static void Write(string target, byte[] content)
    {
        string neighbour = target + ".sequencer-part";
        File.WriteAllBytes(neighbour, content);
        if (!OperatingSystem.IsWindows() && File.Exists(target))
        {
            File.SetUnixFileMode(neighbour, File.GetUnixFileMode(target));
        }

        File.Move(neighbour, target, overwrite: true);
    }
}
