using Sequencer.Control.TransitionSystems;
using Sequencer.Testing;

namespace Sequencer.Proof.Tests.KnownAnswers;

/// <summary>
/// A safe Petri net, place by place. As a transition system each place is a Boolean, and one free input names the transition
/// that fires in a scan if it is enabled, so that the states reached are the markings reached.
/// </summary>
internal sealed class PetriNet
{
    private readonly List<(string Name, bool Marked)> _places = [];
    private readonly List<(int[] From, int[] To)> _transitions = [];

    public int Place(string name, bool marked = false)
    {
        _places.Add((name, marked));
        return _places.Count - 1;
    }

    /// <summary>Places named alike with a number from 0 on.</summary>
    public int[] Places(string name, int count, bool marked = false) =>
        [.. Enumerable.Range(0, count).Select(number => Place(FormattableString.Invariant($"{name}{number}"), marked))];

    /// <summary>A place in both lists is only tested.</summary>
    public void Transition(int[] from, int[] to) => _transitions.Add((from, to));

    /// <summary>The requirement: never are all these places marked.</summary>
    public TransitionSystem ToSystem(params int[] never)
    {
        Sketch sketch = new();
        Expression fires = sketch.Input("fires", 0, _transitions.Count - 1);
        Expression[] places = [.. _places.Select(place => sketch.State(place.Name, place.Marked))];
        Expression[] firing = [.. _transitions.Select((transition, number) => sketch.And([sketch.Is(fires, number), .. transition.From.Select(place => places[place])]))];
        for (int place = 0; place < places.Length; place++)
        {
            Expression[] adding = [.. firing.Where((_, number) => _transitions[number].To.Contains(place))];
            Expression[] taking = [.. firing.Where((_, number) => _transitions[number].From.Contains(place) && !_transitions[number].To.Contains(place))];
            sketch.Next(places[place], sketch.Or([.. adding, sketch.And(places[place], sketch.Not(sketch.Or(taking)))]));
        }

        sketch.Never("never together", [.. never.Select(place => places[place])]);
        return sketch.ToSystem();
    }
}
