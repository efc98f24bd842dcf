namespace Sequencer.StructuredText.Lowering;

internal enum SlotRole
{
    /// <summary>Free in every scan: <c>%I</c>, and the inputs of what is read.</summary>
    Input,

    /// <summary>Written to the plant: <c>%Q</c>, and the outputs of what is read.</summary>
    Output,

    /// <summary>In marker memory, <c>%M</c>: an input where the text never assigns it, else kept like any other.</summary>
    Marker,

    /// <summary>Kept from scan to scan.</summary>
    Kept,
    Temporary,
    Constant,
}
