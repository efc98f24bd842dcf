namespace Sequencer.Export.Writing;

/// <summary>What it is that one unit sees of another.</summary>
internal enum SeenKind
{
    Switch,
    Reading,
    Usable,
    Output,
    Discrepancy,
    Total,
    Latch,
    Trip,
    Step,
    State,
    Fact,
    FactPossibly,
    Asked,
    Owner,
    Count,
    Request,
}
