namespace Sequencer.Simulation.Loop;

public enum ValueOrigin
{
    Input,
    State,
    Output,
    Observed,
    PlantQuantity,
    PlantTotal,
}
