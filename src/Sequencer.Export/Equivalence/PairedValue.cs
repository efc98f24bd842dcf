using Sequencer.Control.TransitionSystems;
using Sequencer.Text;

namespace Sequencer.Export.Equivalence;

/// <summary>
/// What should be the same in the program and in the text in every scan: both names, both values as expressions of
/// the product, and both places in the sources.
/// </summary>
internal sealed record PairedValue(
    string Reference, string Other, Expression ReferenceValue, Expression OtherValue, Origin ReferenceOrigin, Origin OtherOrigin);
