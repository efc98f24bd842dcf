using Sequencer.Control.TransitionSystems;

namespace Sequencer.Proof.Slicing;

/// <summary>Some of a system's variables, by their places: slicing asks for them for every requirement.</summary>
internal sealed class VariableSet(TransitionSystem system)
{
    private readonly bool[] _inputs = new bool[system.Inputs.Length];
    private readonly bool[] _states = new bool[system.States.Length];

    public bool Contains(Variable variable) => PlacesOf(variable)[variable.Index];

    /// <summary>Takes in what the expressions read, and whatever the next values of that read.</summary>
    public void Reach(IEnumerable<Expression> roots)
    {
        Stack<Variable> open = new(ExpressionGraph.Variables(roots));
        while (open.TryPop(out Variable? variable))
        {
            bool[] places = PlacesOf(variable);
            if (!places[variable.Index] && variable.Role == VariableRole.State)
            {
                foreach (Variable read in system.ReadByNext[variable.Index])
                {
                    open.Push(read);
                }
            }

            places[variable.Index] = true;
        }
    }

    private bool[] PlacesOf(Variable variable) => variable.Role == VariableRole.Input ? _inputs : _states;
}
