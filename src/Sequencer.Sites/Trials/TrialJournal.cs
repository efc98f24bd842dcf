using System.Globalization;
using System.Text;
using Sequencer.Simulation.Trials;
using Sequencer.Sites.Folders;

namespace Sequencer.Sites.Trials;

/// <summary>
/// The runs that are done, a line each, in the results' folder: what a set that was ended at any moment goes on from. Each part of
/// a set has a journal of its own beside the others.
/// </summary>
internal sealed class TrialJournal : IDisposable
{
    public const string FolderName = "journal";
    private const string Head = "runs of a trial set, 1\t";

    /// <summary>Begins the name of what a process holds while it writes a journal, so that others may read it but not write it.</summary>
    private const string ClaimMark = ".";

    private readonly FileStream _file;
    private readonly FileStream _claim;
    private readonly Lock _gate = new();

    private TrialJournal(FileStream file, FileStream claim)
    {
        _file = file;
        _claim = claim;
    }

    /// <summary>Every run that any journal of the folder has whole.</summary>
    /// <exception cref="OutputRefusedException">A journal is of another set, or none of ours.</exception>
    public static SortedDictionary<int, RunSummary> Read(string results, string identity)
    {
        SortedDictionary<int, RunSummary> runs = [];
        string folder = Path.Combine(results, FolderName);
        if (!Directory.Exists(folder))
        {
            return runs;
        }

        foreach (string path in Directory.EnumerateFiles(folder).Where(path => !Path.GetFileName(path).StartsWith(ClaimMark, StringComparison.Ordinal)).Order(StringComparer.Ordinal))
        {
            foreach (string line in Lines(path, identity))
            {
                if (SummaryLine.Read(line) is { } read)
                {
                    runs[read.Run] = read.Summary;
                }
            }
        }

        return runs;
    }

    /// <summary>Opens the journal of a part to be gone on with; what an end in the middle of a line has left is cut off.</summary>
    /// <exception cref="OutputRefusedException">It is of another set, another process writes it, or it cannot be written.</exception>
    public static TrialJournal Open(string results, (int Part, int Of)? part, string identity)
    {
        string name = part is (int number, int of) ? string.Create(CultureInfo.InvariantCulture, $"part-{number}-of-{of}.txt") : "runs.txt";
        string path = Path.Combine(results, FolderName, name);
        try
        {
            Directory.CreateDirectory(Path.Combine(results, FolderName));
            FileStream claim = new(Path.Combine(results, FolderName, ClaimMark + name), FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.None, 1, FileOptions.DeleteOnClose);
            FileStream? file = null;
            try
            {
                file = new FileStream(path, FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.ReadWrite);
                _ = Lines(path, identity);
                byte[] head = Encoding.UTF8.GetBytes(Head + identity + "\n");
                long whole = Whole(file);
                if (whole < head.Length)
                {
                    file.SetLength(0);
                    file.Write(head);
                    file.Flush(flushToDisk: true);
                }
                else
                {
                    file.SetLength(whole);
                    file.Seek(0, SeekOrigin.End);
                }

                return new TrialJournal(file, claim);
            }
            catch
            {
                file?.Dispose();
                claim.Dispose();
                throw;
            }
        }
        catch (Exception failure) when (failure is IOException or UnauthorizedAccessException)
        {
            throw new OutputRefusedException($"`{path}` cannot be written, perhaps because the same trials are at work in another process: {failure.Message}");
        }
    }

    public void Add(int run, RunSummary summary)
    {
        byte[] line = Encoding.UTF8.GetBytes(SummaryLine.Write(run, summary) + "\n");
        lock (_gate)
        {
            _file.Write(line);
            _file.Flush(flushToDisk: true);
        }
    }

    public void Dispose()
    {
        _file.Dispose();
        _claim.Dispose();
    }

    /// <summary>How many bytes stand before the end of the last whole line.</summary>
    private static long Whole(FileStream file)
    {
        byte[] content = new byte[file.Length];
        file.Seek(0, SeekOrigin.Begin);
        file.ReadExactly(content);
        return content.AsSpan().LastIndexOf((byte)'\n') + 1;
    }

    private static string[] Lines(string path, string identity)
    {
        string[] lines;
        try
        {
            using FileStream file = new(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite);
            using StreamReader reader = new(file, Encoding.UTF8);
            lines = reader.ReadToEnd().Split('\n');
        }
        catch (Exception failure) when (failure is IOException or UnauthorizedAccessException)
        {
            throw new OutputRefusedException($"`{path}` cannot be read: {failure.Message}");
        }

        if (lines.Length < 2 && (Head + identity).StartsWith(lines[0], StringComparison.Ordinal))
        {
            return [];
        }

        if (!lines[0].StartsWith(Head, StringComparison.Ordinal))
        {
            throw new OutputRefusedException($"`{path}` is no journal of ours and is left as it is; choose another folder for the results");
        }

        if (lines[0] != Head + identity)
        {
            throw new OutputRefusedException(
                $"`{path}` has runs of another trial set: the site, its trials, --runs, --seed, --faults or this program were others then; choose another folder for the results, or remove that folder `{FolderName}`");
        }

        return lines[1..];
    }
}
