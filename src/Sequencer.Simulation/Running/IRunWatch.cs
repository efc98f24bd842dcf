using Sequencer.Simulation.Records;

namespace Sequencer.Simulation.Running;

/// <summary>Sees a run scan by scan and keeps of it what it is for.</summary>
internal interface IRunWatch
{
    /// <summary>Scans between two looks at whether the run was cancelled.</summary>
    long SampleScans { get; }

    /// <summary>Has seen enough: the run ends with this scan.</summary>
    bool IsOver { get; }

    /// <summary>Between the loop's scan and its advance.</summary>
    void Observe();

    /// <summary>Something was done to the plant or by the operator in this scan.</summary>
    void Note(RunEventKind kind, string subject, string words);
}
