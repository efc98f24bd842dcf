using Sequencer.Control.TransitionSystems;

namespace Sequencer.Export.Equivalence;

/// <summary>The variables that some values of a system depend on, in this scan or through scans before.</summary>
internal static class NeededVariables
{
    public static HashSet<Variable> Of(TransitionSystem system, IEnumerable<Expression> roots)
    {
        HashSet<Variable> needed = [];
        Queue<Variable> open = new(ExpressionGraph.Variables(roots));
        while (open.TryDequeue(out Variable? variable))
        {
            if (!needed.Add(variable) || variable.Role != VariableRole.State)
            {
                continue;
            }

            foreach (Variable read in ExpressionGraph.Variables([system.States[variable.Index].Next]))
            {
                open.Enqueue(read);
            }
        }

        return needed;
    }
}
