using Sequencer.Language.Programs;

namespace Sequencer.Export.Writing;

/// <summary>
/// The steps sorted into branches of which at most one step each is ever active, so that each branch is
/// one enumerated variable and one CASE: a fork gives each branch but the first a new variable, a join
/// goes on in the first of its branches. Each section begins a branch of its own. Where the chart does not sort that way, every step is a branch
/// of its own, which is always right.
/// </summary>
internal static class StepRegions
{
    public static IReadOnlyList<IReadOnlyList<Step>> Of(UnitProgram unit)
    {
        Dictionary<int, int> regions = [];
        foreach (ProceduralState state in unit.StatesWithSteps)
        {
            regions.Add(unit.FirstStep(state).Number, regions.Count);
        }

        int count = regions.Count;
        bool clash = false;
        IReadOnlyList<OrderedTransition> transitions = TransitionOrder.Of(unit);
        for (bool grown = true; grown;)
        {
            grown = false;
            foreach (OrderedTransition transition in transitions.Where(transition => transition.From.All(regions.ContainsKey)))
            {
                for (int index = 0; index < transition.To.Length; index++)
                {
                    int step = transition.To[index];
                    int inherited = transition.From.Select(from => regions[from]).Min();
                    if (!regions.TryGetValue(step, out int region))
                    {
                        regions[step] = index == 0 ? inherited : count++;
                        grown = true;
                    }
                    else
                    {
                        clash |= index == 0 ? region != inherited : region == inherited;
                    }
                }
            }
        }

        return clash || regions.Count < unit.Steps.Length
            ? [.. unit.Steps.Select(step => (IReadOnlyList<Step>)[step])]
            : [.. unit.Steps.GroupBy(step => regions[step.Number]).OrderBy(group => group.Key).Select(group => (IReadOnlyList<Step>)[.. group])];
    }
}
