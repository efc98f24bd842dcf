namespace Sequencer.Simulation.Traces;

public enum TraceHappeningKind
{
    /// <summary>The operator did it.</summary>
    Operator,

    /// <summary>A signal of the plant, or the power.</summary>
    Signal,

    /// <summary>The program: a state, a step, a latch.</summary>
    Program,

    /// <summary>What the program writes.</summary>
    Output,
}
