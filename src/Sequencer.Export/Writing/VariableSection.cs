namespace Sequencer.Export.Writing;

internal enum VariableSection
{
    Input,

    /// <summary>Handed in from another unit: what it showed at the end of the last scan.</summary>
    Seen,

    Output,

    /// <summary>Handed out to other units at the end of the scan.</summary>
    Shown,

    /// <summary>Kept through a loss of power.</summary>
    Retained,

    /// <summary>Kept from scan to scan, begun anew after a loss of power.</summary>
    Kept,

    /// <summary>Meaningful within one scan.</summary>
    Temporary,
}
