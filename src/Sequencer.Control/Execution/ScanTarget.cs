namespace Sequencer.Control.Execution;

/// <summary>A place in one of a stepper's arrays that a scan writes.</summary>
internal readonly record struct ScanTarget(TargetArray Array, int Index);
