namespace Sequencer.Language.Programs;

public enum OutputFactKind
{
    /// <summary>Commanded on: what was written last scan; in interlocks and requirements, what this scan writes.</summary>
    On,

    /// <summary>On, and its confirmation agrees.</summary>
    Proved,

    /// <summary>Its discrepancy is latched.</summary>
    Failed,
}
