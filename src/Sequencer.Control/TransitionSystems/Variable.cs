namespace Sequencer.Control.TransitionSystems;

/// <summary>
/// A typed variable. <see cref="Index"/> is its place among the system's variables of the same role:
/// the place in the arrays of a stepper. A Boolean has the range 0..1. An input is promised to lie in
/// its range; a state variable's range is proved when the system is built (<see cref="TransitionSystem"/>).
/// </summary>
public sealed record Variable(string Name, VariableRole Role, int Index, Sort Sort, IntegerRange Range)
{
    public override string ToString() => Name;
}
