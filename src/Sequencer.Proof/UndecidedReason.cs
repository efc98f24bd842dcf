namespace Sequencer.Proof;

public enum UndecidedReason
{
    /// <summary>The budget of conflicts or refinements was spent.</summary>
    Budget,

    /// <summary>The facts that a proof was to start from do not suffice; nothing else was tried.</summary>
    FactsInsufficient,

    /// <summary>The caller cancelled, by hand or by a deadline.</summary>
    Cancelled,

    /// <summary>An engine's trace did not replay: a defect of ours.</summary>
    TraceRefused,

    /// <summary>An engine's invariant did not pass the check: a defect of ours.</summary>
    InvariantRefused,
}
