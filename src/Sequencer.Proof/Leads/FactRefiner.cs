using Sequencer.Control.TransitionSystems;
using Sequencer.Proof.ClauseLearning;

namespace Sequencer.Proof.Leads;

/// <summary>
/// Adds facts that tell the state where a lead went cold from the witness that promised a way on. Timers
/// that ran together are told apart by their difference, which stays what it is for however long they
/// run: a bound would only be good for one more scan.
/// </summary>
internal static class FactRefiner
{
    private const int MostRelations = 12;

    /// <returns>How many facts were added.</returns>
    public static int Refine(TransitionSystem system, ExpressionBuilder builder, FactTable facts, Stuck stuck)
    {
        int before = facts.Count;
        foreach (int state in stuck.At.Exact.Order().Where(state => stuck.At.Witness[state] != stuck.End[state]))
        {
            if (!Relate(system, builder, facts, stuck, state))
            {
                Expression variable = builder.Variable(system.States[state].Variable);
                Separate(facts, [(variable, 1)], stuck.End[state], stuck.At.Witness[state]);
            }
        }

        return facts.Count - before;
    }

    private static bool Relate(TransitionSystem system, ExpressionBuilder builder, FactTable facts, Stuck stuck, int state)
    {
        long ran = stuck.End[state] - stuck.Entry[state];
        int added = 0;
        for (int other = 0; other < system.States.Length && ran != 0 && added < MostRelations; other++)
        {
            bool together = other != state && system.States[other].Variable.Sort == Sort.Integer && stuck.End[other] - stuck.Entry[other] == ran;
            if (together)
            {
                (int first, int second) = (Math.Min(state, other), Math.Max(state, other));
                (Expression, long)[] difference = [(builder.Variable(system.States[first].Variable), 1), (builder.Variable(system.States[second].Variable), -1)];
                bool isNew = Separate(facts, difference, stuck.End[first] - stuck.End[second], stuck.At.Witness[first] - stuck.At.Witness[second]);
                added += isNew ? 1 : 0;
            }
        }

        return added > 0;
    }

    /// <summary>A bound at the real value, on the side of the witness's.</summary>
    private static bool Separate(FactTable facts, (Expression, long)[] terms, long real, long witness) =>
        real != witness && facts.AddAtMost(terms, real < witness ? real : real - 1);
}
