using System.Text;
using Sequencer.Proof.Remembering;

namespace Sequencer.Sites.Folders;

/// <summary>Invariants found before, a file each. The folder may be deleted at any time. When it has grown large the oldest files go.</summary>
internal sealed class ProofFolder : IProofMemory
{
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
            foreach (FileInfo old in made.GetFiles("*.smt2").OrderByDescending(file => file.LastWriteTimeUtc).Skip(MostFiles))
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

    public string? Find(string fingerprint)
    {
        string file = Named(fingerprint);
        try
        {
            return File.Exists(file) && new FileInfo(file).Length <= LargestFile ? File.ReadAllText(file, Encoding.UTF8) : null;
        }
        catch (Exception failure) when (failure is IOException or UnauthorizedAccessException)
        {
            return null;
        }
    }

    public void Keep(string fingerprint, string text)
    {
        try
        {
            WholeFile.Write(Named(fingerprint), Encoding.UTF8.GetBytes(text));
        }
        catch (Exception failure) when (failure is IOException or UnauthorizedAccessException)
        {
            // A proof that cannot be kept is found again next time.
        }
    }

    private string Named(string fingerprint) => Path.Combine(_folder, $"{fingerprint}.smt2");
}
