using Sequencer.Control.TransitionSystems;
using Sequencer.Language.Programs;

namespace Sequencer.Lowering;

/// <summary>
/// Where a condition stands, which decides what its words mean: whether an output's name is this scan's
/// final value (in protections and requirements) or what was written last scan; in which step its
/// <c>stays</c> starts anew; and the path that names the clocks it needs.
/// </summary>
internal sealed class ConditionPlace
{
    private int _clocks;

    public ConditionPlace(string path, bool thisScansOutputs = false, Step? step = null, StatePurpose purpose = StatePurpose.Control, bool ofPlant = false)
    {
        Path = path;
        ThisScansOutputs = thisScansOutputs;
        Step = step;
        Purpose = purpose;
        OfPlant = ofPlant;
    }

    public string Path { get; }

    public bool ThisScansOutputs { get; }

    public Step? Step { get; }

    public StatePurpose Purpose { get; }

    /// <summary>What the plant does by itself: devices are where the last scan left them, and what is shown is what is so.</summary>
    public bool OfPlant { get; }

    /// <summary>A requirement sees other units as they are in this scan; a program sees what they showed in the last.</summary>
    public bool Witness => Purpose == StatePurpose.Monitor && ThisScansOutputs;

    /// <summary>What is so counts, not what a failing instrument shows.</summary>
    public bool IsTrue => Witness || OfPlant;

    /// <summary>The next name for a clock or a memory of this condition, in the order of its words.</summary>
    public string NextName(string kind)
    {
        _clocks++;
        return _clocks == 1 ? $"{Path}.{kind}" : FormattableString.Invariant($"{Path}.{kind}{_clocks}");
    }
}
