using System.Collections.Immutable;

namespace Sequencer.Simulation.Metadata;

/// <summary>A question to the operator, named with its unit as <c>R101.Q1</c>.</summary>
public sealed record PromptMetadata(string Unit, string Name, string Question, string Role, ImmutableArray<string> Answers)
{
    /// <summary>The operator's input: the number of the answer, from 1, while it is pressed.</summary>
    public string Input => Name + ".input";

    /// <summary>True while it is asked.</summary>
    public string Asks => Name + ".asks";

    /// <summary>The number of the answer that was taken; 0 for none.</summary>
    public string Answer => Name + ".answer";
}
