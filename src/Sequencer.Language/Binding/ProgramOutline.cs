using Sequencer.Language.Syntax;
using Sequencer.Text;

namespace Sequencer.Language.Binding;

/// <summary>The statements of a program sorted by what they are, in written order.</summary>
internal sealed class ProgramOutline
{
    public required SourceText Source { get; init; }

    public PlacedSyntax<UnitSyntax>? Unit { get; set; }

    public List<PlacedSyntax<DeclarationSyntax>> Declarations { get; } = [];

    public List<PlacedSyntax<StartSyntax>> Starts { get; } = [];

    public List<PlacedSyntax<OverrideSyntax>> Overrides { get; } = [];

    public PlacedSyntax<RestartSyntax>? Restart { get; set; }

    public PlacedSyntax<HeldLimitSyntax>? HeldLimit { get; set; }

    public PlacedSyntax<AdvanceSyntax>? Advance { get; set; }

    public List<PlacedSyntax<CalibrateSyntax>> Calibrations { get; } = [];

    public List<PlacedSyntax<AskedSyntax>> Asked { get; } = [];

    public List<StepOutline> Steps { get; } = [];

    /// <summary>Joins, each with the number of steps written before it.</summary>
    public List<(PlacedSyntax<JoinSyntax> Join, int StepsBefore)> Joins { get; } = [];

    /// <summary>Malformed lines that may have been steps: a step that is not there may be among them.</summary>
    public bool StepsMayBeMissing { get; set; }

    /// <summary>Names that malformed lines seem to declare; null stands for any name at all.</summary>
    public List<string?> PoisonedNames { get; } = [];
}
