namespace Sequencer.Language.Binding;

/// <summary>
/// What the place of a condition allows: an assumption speaks of inputs only; <c>after the last pulse</c>
/// needs a step that doses.
/// </summary>
internal readonly record struct ConditionUse(bool InputsOnly, bool PulsesGiven)
{
    /// <summary>The step that the line belongs to.</summary>
    public int? Step { get; init; }
}
