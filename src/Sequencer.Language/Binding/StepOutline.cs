using Sequencer.Language.Programs;
using Sequencer.Language.Syntax;

namespace Sequencer.Language.Binding;

/// <summary>
/// A step and the lines below it. Without a <see cref="Header"/> where that line was malformed: its lines
/// are still checked, but belong to no step.
/// </summary>
internal sealed class StepOutline
{
    public StepOutline(PlacedSyntax<StepSyntax>? header, string documentation, ProceduralState state)
    {
        State = state;
        Header = header;
        Documentation = documentation;
    }

    public PlacedSyntax<StepSyntax>? Header { get; }

    public string Documentation { get; }

    /// <summary>The state that the step works in.</summary>
    public ProceduralState State { get; }

    public List<PlacedSyntax<StepLineSyntax>> Lines { get; } = [];

    /// <summary>A line of the step is malformed: nothing can be said of what is missing.</summary>
    public bool HasMalformedLine { get; set; }
}
