using System.Collections.Immutable;
using Sequencer.Control.Execution;
using Sequencer.Control.Traces;
using Sequencer.Control.TransitionSystems;
using Sequencer.Export.Writing;
using Sequencer.Proof;
using Sequencer.Proof.Certificates;

namespace Sequencer.Export.Equivalence;

/// <summary>Decides whether text that was read does what its program does, for all inputs, states and times.</summary>
public static class TextEquality
{
    private const int MostNamed = 5;

    /// <summary>What may be spent on a text that the relation guessed does not prove: most are decided with a tenth.</summary>
    private const long MostPropagations = 200_000_000;

    /// <summary>
    /// Every unit's text, in the order of the blocks; and, as undecided, the outputs and alarms of the program that no
    /// block has.
    /// </summary>
    /// <param name="system">The program's system.</param>
    /// <param name="export">The exported text.</param>
    /// <param name="read">What a reader made of the text, one system a block.</param>
    /// <param name="options">The budget of each unit.</param>
    /// <param name="cancellation">Makes what is left undecided.</param>
    public static ImmutableArray<EqualityResult> DecideAll(
        TransitionSystem system, StructuredTextExport export, ImmutableArray<TransitionSystem> read, ProofOptions options, CancellationToken cancellation)
    {
        PairedNames[] names = [.. export.Blocks.Select(block => new PairedNames(block))];
        string[] missing =
        [
            .. system.Outputs.Where(output => names.All(block => block.Image(output.Name) is null)).Select(output => $"output {output.Name}"),
            .. system.Alarms.Where(alarm => names.All(block => block.Alarm(alarm.Name) is null)).Select(alarm => $"alarm {alarm.Name}"),
        ];
        return
        [
            .. export.Blocks.Zip(read, (block, text) => Decide(system, text, block, options, cancellation)),
            .. missing.Length == 0 ? [] : new EqualityResult[] { new EqualityUndecided(system.Name, $"in no block: {string.Join(", ", missing)}") },
        ];
    }

    /// <summary>One unit's text.</summary>
    /// <param name="system">The program's system.</param>
    /// <param name="read">What a reader made of the text of one unit.</param>
    /// <param name="block">Which names of the text stand for what.</param>
    /// <param name="options">The budget of the proof.</param>
    /// <param name="cancellation">Makes the result undecided; nothing is thrown for it.</param>
    public static EqualityResult Decide(
        TransitionSystem system, TransitionSystem read, ExportedBlock block, ProofOptions options, CancellationToken cancellation) =>
        Decide(system, read, block, options, DifferenceSearch.Unaided, cancellation);

    /// <param name="system">The program's system.</param>
    /// <param name="read">What a reader made of the text of one unit.</param>
    /// <param name="block">Which names of the text stand for what.</param>
    /// <param name="options">The budget of the proof.</param>
    /// <param name="search">Helps where the text cannot be proved equal at once.</param>
    /// <param name="cancellation">Makes the result undecided.</param>
    internal static EqualityResult Decide(
        TransitionSystem system, TransitionSystem read, ExportedBlock block, ProofOptions options, DifferenceSearch search, CancellationToken cancellation)
    {
        ProductSystem product = new(system, read, block);
        if (product.Unpaired.Count > 0)
        {
            // What is paired may differ all the same: then there is a run that says more than a name that is missing.
            string more = product.Unpaired.Count > MostNamed ? FormattableString.Invariant($" and {product.Unpaired.Count - MostNamed} more") : "";
            return search.LastResort() ?? (EqualityResult)new EqualityUndecided(block.Unit, $"without a partner: {string.Join(", ", product.Unpaired.Take(MostNamed))}{more}");
        }

        ProofOptions limited = options with { Propagations = Math.Min(options.Propagations, MostPropagations) };
        return Prover.DecideFrom(product.System, product.Guesses, product.Builder, () => search.Alike(product), () => [.. search.Ways().Select(product.OfReference)], limited, cancellation) switch
        {
            Holds holds => new ProvedEqual(block.Unit, product.Pairs.Count, Certificate(product, holds)),
            Fails fails => Difference(product, fails.Trace, block),
            Proof.Undecided undecided => search.LastResort() ?? (EqualityResult)new EqualityUndecided(block.Unit, undecided.Words + NotKept(product, undecided.NotKept)),
            Verdict verdict => throw new System.Diagnostics.UnreachableException($"no result of {verdict.GetType().Name}"),
        };
    }

    /// <summary>What a scan that begins alike may leave different: the places to look at.</summary>
    private static string NotKept(ProductSystem product, ImmutableArray<Expression> lost)
    {
        PairedValue[] pairs = [.. product.Pairs.Where(pair => lost.Contains(product.Builder.Equal(pair.ReferenceValue, pair.OtherValue)))];
        return pairs.Length == 0 ? "" : $" A scan that begins alike may leave different: {string.Join(", ", pairs.Take(MostNamed).Select(pair =>
            $"{pair.Reference} ({pair.ReferenceOrigin.Span}) and {pair.Other} ({pair.OtherOrigin.Span})"))}.";
    }

    /// <summary>Written and read back before it counts: a defect of ours must not look like evidence.</summary>
    private static string Certificate(ProductSystem product, Holds holds)
    {
        string text = CertificateWriter.WriteByParts(product.System, product.Requirement, holds.Invariant);
        CertificateFinding finding = CertificateChecker.Check(product.System, product.Requirement, text);
        return finding.IsAccepted ? text : throw new InvalidOperationException($"the certificate of {product.Requirement.Name} is refused: {finding.Reason}");
    }

    private static ProvedDifferent Difference(ProductSystem product, Trace trace, ExportedBlock block)
    {
        ImmutableArray<Expression> values = [.. product.Pairs.SelectMany(pair => ImmutableArray.Create(pair.ReferenceValue, pair.OtherValue))];
        ProvedDifferent? found = null;
        Trace inputs = new([.. trace.Segments.Select(segment => segment with { Inputs = product.ReferenceInputs(segment.Inputs) })]);
        TracePlayback.Play(trace, new Interpreter(product.System, values), (run, scan) =>
        {
            for (int index = 0; index < product.Pairs.Count && found is null; index++)
            {
                (long ours, long theirs) = (run.Observed[2 * index], run.Observed[(2 * index) + 1]);
                PairedValue pair = product.Pairs[index];
                found = ours == theirs ? null : new ProvedDifferent(
                    block.Unit, new LockstepDifference(scan + 1, pair.Reference, pair.Other, ours, theirs, inputs), pair.ReferenceOrigin.Span, pair.OtherOrigin.Span);
            }

            return found is null;
        });
        return found ?? throw new InvalidOperationException($"the difference found for {block.Unit} does not replay");
    }
}
