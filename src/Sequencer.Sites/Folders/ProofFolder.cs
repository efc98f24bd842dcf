using System.Text;
using Sequencer.Proof.Remembering;

namespace Sequencer.Sites.Folders;

/// <summary>Invariants and ways found before, a file each. The folder may be deleted at any time. When it has grown large the oldest files go.</summary>
internal sealed class ProofFolder : IProofMemory
{
    private const string Suffix = ".found";
    private const int MostFiles = 20_000;
    private const long LargestFile = 4_000_000;

    private readonly string _folder;

    private ProofFolder(string folder) => _folder = folder;

    /// <summary>Null where the folder cannot be made or read: then nothing is remembered.</summary>
    public static ProofFolder? In(string folder)
    {
        try
        {
            DirectoryInfo made = Directory.CreateDirectory(folder);
            foreach (FileInfo old in made.GetFiles($"*{Suffix}").OrderByDescending(file => file.LastWriteTimeUtc).Skip(MostFiles))
            {
                old.Delete();
            }

            return new ProofFolder(folder);
        }
        catch (Exception failure) when (failure is IOException or UnauthorizedAccessException)
        {
            return null;
        }
    }

    public string? Find(string key)
    {
        string file = Named(key);
        try
        {
            return File.Exists(file) && new FileInfo(file).Length <= LargestFile ? File.ReadAllText(file, Encoding.UTF8) : null;
        }
        catch (Exception failure) when (failure is IOException or UnauthorizedAccessException)
        {
            return null;
        }
    }

    public void Keep(string key, string text)
    {
        if (Find(key) == text)
        {
            return;
        }

        try
        {
            WholeFile.Write(Named(key), Encoding.UTF8.GetBytes(text));
        }
        catch (Exception failure) when (failure is IOException or UnauthorizedAccessException)
        {
            // A proof that cannot be kept is found again next time.
        }
    }

    private string Named(string key) => Path.Combine(_folder, $"{key}{Suffix}");
}
