namespace Sequencer.Control.Execution;

/// <summary>One piece of a compiled scan, over the arrays of the stepper that runs it.</summary>
internal delegate void ScanCode(long[] inputs, long[] states, long[] nextStates, long[] outputs, long[] observed, long[] carried);
