using System.Collections.Immutable;
using Sequencer.Control.Traces;
using Sequencer.Control.TransitionSystems;
using Sequencer.Export.Writing;
using Sequencer.StructuredText;
using Sequencer.Text;

namespace Sequencer.Export.Equivalence;

/// <summary>
/// Reads exported text back, by a reader that knows nothing of programs or of the writer, and runs it
/// beside the system that it was written from. No difference in so many scans is a test, not a proof.
/// </summary>
public static class ReadBack
{
    public static ReadBackResult Run(TransitionSystem system, StructuredTextExport export, int scans, int seed, CancellationToken cancellation) =>
        Each(system, export, lockstep => lockstep.Run(scans, seed, cancellation), scans, cancellation);

    /// <summary>The same on the inputs of one run of the program. Where nothing differs, the text breaks in its last scan what the program breaks there.</summary>
    public static ReadBackResult Replay(TransitionSystem system, StructuredTextExport export, Trace trace, CancellationToken cancellation) =>
        Each(system, export, lockstep => lockstep.Replay(trace, cancellation), trace.Scans, cancellation);

    /// <summary>The same with text that was read already: the first difference in some block, null where there is none.</summary>
    /// <param name="system">The programs.</param>
    /// <param name="export">Their text.</param>
    /// <param name="read">Its blocks as they were read, in the order of the export.</param>
    /// <param name="trace">A run of the programs.</param>
    /// <param name="cancellation">Ends the run.</param>
    public static LockstepDifference? Replay(
        TransitionSystem system, StructuredTextExport export, ImmutableArray<TransitionSystem> read, Trace trace, CancellationToken cancellation) =>
        export.Blocks.Zip(read, (block, text) => new Lockstep(system, text, Names(system, text, block)).Replay(trace, cancellation).Difference).FirstOrDefault(difference => difference is not null);

    private static ReadBackResult Each(
        TransitionSystem system, StructuredTextExport export, Func<Lockstep, LockstepResult> play, long scans, CancellationToken cancellation)
    {
        long compared = 0;
        List<TransitionSystem> systems = [];
        SourceText text = new("exported text", export.Text);
        foreach (ExportedBlock block in export.Blocks)
        {
            ReadingResult read = StructuredTextReader.Read(text, new ReadingOptions(block.FunctionBlock, system.ScanMilliseconds), cancellation);
            if (read.System is null || read.Diagnostics.Any(diagnostic => diagnostic.Severity == Severity.Error))
            {
                return new ReadBackResult(0, 0, null, read.Diagnostics, []);
            }

            systems.Add(read.System);
            LockstepResult result = play(new Lockstep(system, read.System, Names(system, read.System, block)));
            compared += result.Compared.Length;
            if (result.Difference is not null)
            {
                return new ReadBackResult(result.Difference.Scan, compared, result.Difference, read.Diagnostics, []);
            }
        }

        return new ReadBackResult(scans, compared, null, [], [.. systems]);
    }

    /// <summary>Variables of both systems that stand for the same, the program's name first.</summary>
    internal static Dictionary<string, string> Names(TransitionSystem system, TransitionSystem read, ExportedBlock block)
    {
        HashSet<string> ours = [.. Variables(system)];
        HashSet<string> theirs = [.. Variables(read)];
        Dictionary<string, string> names = new(StringComparer.Ordinal) { ["power.returned"] = "power.returned" };
        foreach (ExportedVariable variable in block.Variables.Where(variable => theirs.Contains(variable.Name)))
        {
            foreach (string name in ImmutableArray.Create(variable.Path, $"{block.Unit}.{variable.Path}").Where(ours.Contains))
            {
                names[name] = variable.Name;
            }
        }

        return names;
    }

    private static IEnumerable<string> Variables(TransitionSystem system) =>
        system.Inputs.Select(input => input.Name)
            .Concat(system.Outputs.Select(output => output.Name))
            .Concat(system.States.Select(state => state.Variable.Name));
}
