namespace Sequencer.Control.Execution;

internal enum TargetArray
{
    Outputs,
    Observed,
    NextStates,
}
