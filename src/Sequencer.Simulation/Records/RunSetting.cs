namespace Sequencer.Simulation.Records;

/// <summary>A parameter's setting when the run started.</summary>
public sealed record RunSetting(string Parameter, double Value, int Decimals, string Unit, string Description);
