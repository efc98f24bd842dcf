using System.Collections.Immutable;
using System.Text.RegularExpressions;
using Sequencer.Control.Traces;
using Sequencer.Control.TransitionSystems;
using Sequencer.Export.Wiring;
using Sequencer.Export.Writing;
using Sequencer.Proof;
using Sequencer.StructuredText;
using Sequencer.Text;

namespace Sequencer.Export.Equivalence;

/// <summary>Decides whether a text that somebody edited by hand still does what the program does.</summary>
public static partial class TextComparison
{
    private const int LockstepScans = 20_000;
    private const int LockstepSeed = 1;
    private const int MostNamed = 5;

    /// <summary>Runs of hours at most, from one way after the other, about a second each; then as many with contacts that flicker.</summary>
    private const int MostLongStays = 120;

    /// <summary>From the end of each way: how long at most, and in one of how many scans an input changes.</summary>
    private static readonly ImmutableArray<(int Scans, int Between)> Stays =
        [(20_000, 0), (8_000, 600), (8_000, 250), (8_000, 250), (6_000, 100), (6_000, 100), (6_000, 60), (3_000, 25)];

    /// <summary>
    /// Reads the text. A block that it does not have under our name is looked for as its last FUNCTION_BLOCK, which is where we
    /// write the one that holds all others.
    /// </summary>
    public static ReadText Read(TransitionSystem system, StructuredTextExport export, SourceText text, CancellationToken cancellation)
    {
        string[] blocks = [.. FunctionBlock().Matches(Comment().Replace(text.Content, " ")).Select(match => match.Groups[1].Value)];
        List<TransitionSystem> systems = [];
        List<Diagnostic> diagnostics = [];
        foreach (ExportedBlock block in export.Blocks)
        {
            string name = blocks.Contains(block.FunctionBlock, StringComparer.OrdinalIgnoreCase) || blocks.Length == 0 ? block.FunctionBlock : blocks[^1];
            ReadingResult read = StructuredTextReader.Read(text, new ReadingOptions(name, system.ScanMilliseconds), cancellation);
            diagnostics.AddRange(read.Diagnostics);
            if (read.System is null || read.Diagnostics.Any(diagnostic => diagnostic.Severity == Severity.Error))
            {
                return new ReadText(text, [], [.. diagnostics]);
            }

            systems.Add(read.System);
        }

        return new ReadText(text, [.. systems], [.. diagnostics]);
    }

    /// <summary>
    /// A result for each block, as <see cref="TextEquality.DecideAll"/> gives them, and the pairs of variables, ours first, that
    /// were guessed. A random run looks for a difference before the proof does. Where a difference may be one of the
    /// pairing it is told as undecided.
    /// </summary>
    /// <param name="system">The program's system.</param>
    /// <param name="export">What we write of it.</param>
    /// <param name="text">The edited text, read without errors.</param>
    /// <param name="options">The budget of each block.</param>
    /// <param name="ways">
    /// Runs of the program to places deep in its procedures; asked for only where the text could not be proved equal. From the end of each the search
    /// for a difference goes on.
    /// </param>
    /// <param name="cancellation">Makes what is left undecided.</param>
    public static (ImmutableArray<EqualityResult> Results, ImmutableArray<(string Own, string Other)> Guessed) Decide(
        TransitionSystem system, StructuredTextExport export, ReadText text, ProofOptions options, Func<IReadOnlyList<Trace>> ways, CancellationToken cancellation)
    {
        List<EqualityResult> results = [];
        List<(string Own, string Other)> guessed = [];
        SourceText own = new("export", export.Text);
        foreach ((ExportedBlock block, TransitionSystem read) in export.Blocks.Zip(text.Systems))
        {
            TransitionSystem written = Written(system, own, block, cancellation);
            InferredNames names = new(written, read, cancellation);
            guessed.AddRange(names.Guessed);
            ExportedBlock renamed = names.Renamed(block);
            DifferenceSearch search = new(product => product.Alike(written, names.Image), ways, () => Difference(system, read, renamed, ways(), cancellation));
            EqualityResult result = Difference(system, read, renamed, cancellation) ?? TextEquality.Decide(system, read, renamed, options, search, cancellation);
            results.Add(Judged(result, names));
        }

        return ([.. results], [.. guessed]);
    }

    /// <summary>Whether the edited text still hands its blocks the signals of the site, and brings out what they say.</summary>
    /// <param name="system">The program's system.</param>
    /// <param name="export">What we write of it.</param>
    /// <param name="text">The edited text, read without errors.</param>
    /// <param name="options">The budget, where the text works something out in other words than ours.</param>
    /// <param name="cancellation">Makes what is left undecided.</param>
    public static WiringResult Wiring(TransitionSystem system, StructuredTextExport export, ReadText text, ProofOptions options, CancellationToken cancellation)
    {
        SourceText own = new("export", export.Text);
        ImmutableArray<ExportedBlock> renamed = [.. export.Blocks.Zip(text.Systems, (block, read) => new InferredNames(Written(system, own, block, cancellation), read, cancellation).Renamed(block))];
        return WiringCheck.Decide(export with { Blocks = renamed }, text.Systems, text.Source, system.ScanMilliseconds, options, cancellation);
    }

    private static TransitionSystem Written(TransitionSystem system, SourceText own, ExportedBlock block, CancellationToken cancellation) =>
        StructuredTextReader.Read(own, new ReadingOptions(block.FunctionBlock, system.ScanMilliseconds), cancellation).System
            ?? throw new InvalidOperationException("our own text cannot be read");

    private static EqualityResult Judged(EqualityResult result, InferredNames names)
    {
        if (result is not ProvedDifferent different || !(names.HasGuessedInputs || names.IsGuessed(different.Difference.Other)))
        {
            return result;
        }

        string pairs = string.Join(", ", names.Guessed.Take(MostNamed).Select(pair => $"{pair.Other} for {pair.Own}"));
        string more = names.Guessed.Count() > MostNamed ? ", ..." : "";
        return new EqualityUndecided(result.Unit, $"names were guessed ({pairs}{more}), and so paired {different.Difference}");
    }

    /// <summary>What a random run in lockstep finds; null where it finds nothing.</summary>
    private static ProvedDifferent? Difference(TransitionSystem system, TransitionSystem read, ExportedBlock block, CancellationToken cancellation)
    {
        Lockstep lockstep = new(system, read, ReadBack.Names(system, read, block));
        return Told(system, read, block, lockstep.Run(LockstepScans, LockstepSeed, cancellation).Difference);
    }

    private static ProvedDifferent? Difference(TransitionSystem system, TransitionSystem read, ExportedBlock block, IReadOnlyList<Trace> ways, CancellationToken cancellation)
    {
        if (ways.Count == 0)
        {
            return null;
        }

        IReadOnlyDictionary<string, string> names = ReadBack.Names(system, read, block);
        Lockstep lockstep = new(system, read, names, isLong: true);
        IEnumerable<LockstepDifference?> longRuns = Enumerable.Range(0, 2 * MostLongStays)
            .Select(run => lockstep.Follow(new LongStay(system, ways[run % ways.Count], ways, run >= MostLongStays, run).Give, cancellation).Difference);
        IEnumerable<LockstepDifference?> shortRuns = Stays
            .SelectMany((stay, turn) => ways.Select((way, index) => lockstep.GoOnFrom(way, stay.Scans, stay.Between, (turn * ways.Count) + index, cancellation).Difference));
        return longRuns.Concat(shortRuns).Where(found => found is not null).Select(found => Told(system, read, block, found)).FirstOrDefault();
    }

    private static ProvedDifferent? Told(TransitionSystem system, TransitionSystem read, ExportedBlock block, LockstepDifference? found) =>
        found is null ? null : new ProvedDifferent(block.Unit, found, Place(system, found.Reference).Span, Place(read, found.Other).Span);

    private static Origin Place(TransitionSystem system, string name) =>
        PairedNames.Find(system.Outputs, output => output.Name, name)?.Origin
        ?? PairedNames.Find(system.States, state => state.Variable.Name, name)?.Origin
        ?? PairedNames.Find(system.Definitions, definition => definition.Name, name)?.Origin
        ?? throw new InvalidOperationException($"{name} is nowhere");

    [GeneratedRegex(@"\bFUNCTION_BLOCK\s+([A-Za-z_][A-Za-z0-9_]*)", RegexOptions.IgnoreCase)]
    private static partial Regex FunctionBlock();

    [GeneratedRegex(@"\(\*.*?\*\)|/\*.*?\*/|//[^\n]*", RegexOptions.Singleline)]
    private static partial Regex Comment();
}
