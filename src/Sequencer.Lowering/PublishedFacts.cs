using Sequencer.Control.TransitionSystems;
using Sequencer.Language.Programs;
using Sequencer.Text;

namespace Sequencer.Lowering;

/// <summary>
/// Facts that a unit publishes by name. Everybody, the unit itself too, sees what the condition was in the last scan;
/// before the very first scan it is not so.
/// </summary>
internal sealed class PublishedFacts
{
    private readonly UnitScan _scan;
    private readonly Dictionary<string, (PublishedFact Fact, DeclaredState Surely, DeclaredState Possibly)> _facts = new(StringComparer.Ordinal);
    private readonly Dictionary<string, Truth> _now = new(StringComparer.Ordinal);

    public PublishedFacts(UnitScan scan)
    {
        _scan = scan;
        foreach (PublishedFact fact in scan.Unit.Facts)
        {
            Origin origin = new(fact.Span);
            string name = scan.Named(fact.Name);
            _facts[fact.Name] = (
                fact,
                scan.System.State(name, false, retained: true, StatePurpose.Control, origin),
                scan.System.State($"{name}.possibly", false, retained: true, StatePurpose.Control, origin));
        }
    }

    public Truth AtStart(string fact) => new(_facts[fact].Surely.Current, _facts[fact].Possibly.Current);

    /// <summary>What the condition is in this scan: for requirements, which speak of the plant as it is.</summary>
    public Truth Now(string fact)
    {
        if (!_now.TryGetValue(fact, out Truth now))
        {
            now = ConditionLowering.Lower(_scan, _facts[fact].Fact.Condition, new ConditionPlace(_scan.Named(fact)));
            _now.Add(fact, now);
        }

        return now;
    }

    public void Finish()
    {
        foreach ((PublishedFact fact, DeclaredState surely, DeclaredState possibly) in _facts.Values)
        {
            Truth now = Now(fact.Name);
            surely.Next = now.Surely;
            possibly.Next = now.Possibly;
        }
    }
}
