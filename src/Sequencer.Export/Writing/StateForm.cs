namespace Sequencer.Export.Writing;

/// <summary>What states and steps are in the text.</summary>
public enum StateForm
{
    /// <summary>Values of enumerated types.</summary>
    Enumerated,

    /// <summary>Whole numbers: a state has the number of <see cref="Language.Programs.ProceduralState"/>, a step its own, no step is 0.</summary>
    Integer,
}
