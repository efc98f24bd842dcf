using Sequencer.Control.Traces;
using Sequencer.Proof;

namespace Sequencer.Export.Equivalence;

/// <summary>What helps to find a run that differs, or that there is none, once the relation guessed is not enough.</summary>
/// <param name="Alike">What says of a scan that program and text do the same in it, in few words; null where none are known.</param>
/// <param name="Ways">Runs of the program to places deep in its procedures.</param>
/// <param name="LastResort">Another search for a difference.</param>
internal sealed record DifferenceSearch(Func<ProductSystem, AlikeScan?> Alike, Func<IReadOnlyList<Trace>> Ways, Func<ProvedDifferent?> LastResort)
{
    public static DifferenceSearch Unaided { get; } = new(_ => null, () => [], () => null);
}
