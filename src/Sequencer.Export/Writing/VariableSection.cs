namespace Sequencer.Export.Writing;

internal enum VariableSection
{
    Input,
    Output,

    /// <summary>Kept through a loss of power.</summary>
    Retained,

    /// <summary>Kept from scan to scan, begun anew after a loss of power.</summary>
    Kept,

    /// <summary>Meaningful within one scan.</summary>
    Temporary,
}
