using Sequencer.Control.TransitionSystems;
using Sequencer.Language.Programs;

namespace Sequencer.Lowering;

/// <summary>
/// What the names in a unit's conditions stand for, its own and those of other units. Of another unit a program sees what
/// that unit was at the end of the last scan, a requirement what it is in this one.
/// </summary>
internal sealed class Sight
{
    private readonly UnitScan _scan;

    public Sight(UnitScan scan) => _scan = scan;

    public Expression Switch(SwitchInput input, ConditionPlace place)
    {
        if (!QualifiedName.IsForeign(input.Tag))
        {
            return place.IsTrue ? _scan.Signals.TrueSwitch(input) : _scan.Switch(input);
        }

        (UnitScan other, string tag) = Elsewhere(input.Tag);
        SwitchInput own = other.Unit.SwitchInputs.First(one => one.Tag == tag);
        return place.IsTrue ? other.Signals.TrueSwitch(own) : other.Shown.Switch(own);
    }

    public Expression Reading(AnalogueInput input, ConditionPlace place)
    {
        if (!QualifiedName.IsForeign(input.Tag))
        {
            return place.IsTrue ? _scan.Signals.TrueReading(input) : _scan.Reading(input);
        }

        (UnitScan other, AnalogueInput own) = ReadingElsewhere(input);
        return place.IsTrue ? other.Signals.TrueReading(own) : other.Shown.Reading(own);
    }

    public Expression Usable(AnalogueInput input, ConditionPlace place)
    {
        if (!QualifiedName.IsForeign(input.Tag))
        {
            return place.IsTrue ? _scan.Signals.TrueUsable(input) : _scan.Usable(input);
        }

        (UnitScan other, AnalogueInput own) = ReadingElsewhere(input);
        return place.IsTrue ? other.Signals.TrueUsable(own) : other.Shown.Usable(own);
    }

    public Expression Written(Output output, ConditionPlace place)
    {
        if (!QualifiedName.IsForeign(output.Tag))
        {
            return place.Witness ? _scan.Finals.InPlant(output)
                : place.OfPlant ? _scan.Finals.WasInPlant(output)
                : place.ThisScansOutputs ? _scan.Final(output)
                : _scan.LastWritten(output);
        }

        (UnitScan other, Output own) = OutputElsewhere(output);
        return place.Witness ? other.Finals.InPlant(own) : place.OfPlant ? other.Finals.WasInPlant(own) : other.LastWritten(own);
    }

    public Expression Failed(Output output)
    {
        if (!QualifiedName.IsForeign(output.Tag))
        {
            return _scan.DiscrepancyAtStart(output);
        }

        (UnitScan other, Output own) = OutputElsewhere(output);
        return other.DiscrepancyAtStart(own);
    }

    public Expression Total(Output output)
    {
        if (!QualifiedName.IsForeign(output.Tag))
        {
            return _scan.Total(output);
        }

        (UnitScan other, Output own) = OutputElsewhere(output);
        return other.Total(own);
    }

    public Expression Count(Count count)
    {
        if (!QualifiedName.IsForeign(count.Name))
        {
            return _scan.Counts.AtStart(count.Name);
        }

        (UnitScan other, string name) = Elsewhere(count.Name);
        return other.Counts.AtStart(name);
    }

    public Expression Latch(string latch)
    {
        if (!QualifiedName.IsForeign(latch))
        {
            return _scan.LatchAtStart(latch);
        }

        (UnitScan other, string name) = Elsewhere(latch);
        return other.LatchAtStart(name);
    }

    public Expression Trip(string trip)
    {
        if (!QualifiedName.IsForeign(trip))
        {
            return _scan.TripAtStart(trip);
        }

        (UnitScan other, string name) = Elsewhere(trip);
        return other.TripAtStart(name);
    }

    public Truth Fact(string fact, ConditionPlace place)
    {
        (UnitScan unit, string name) = QualifiedName.IsForeign(fact) ? Elsewhere(fact) : (_scan, fact);
        return place.Witness ? unit.Facts.Now(name) : unit.Facts.AtStart(name);
    }

    public Expression Step(StepFact fact) => (fact.Unit is null ? _scan : _scan.Site.Unit(fact.Unit)).StepAtStart(fact.Step);

    public Expression State(StateFact fact) => fact.Unit is null
        ? _scan.StateAtStartIs(fact.State)
        : _scan.Site.Unit(fact.Unit).State.WasShown(fact.State);

    private (UnitScan Unit, string Name) Elsewhere(string name)
    {
        (string unit, string below) = QualifiedName.Split(name);
        return (_scan.Site.Unit(unit), below);
    }

    private (UnitScan Unit, AnalogueInput Input) ReadingElsewhere(AnalogueInput input)
    {
        (UnitScan other, string tag) = Elsewhere(input.Tag);
        return (other, other.Unit.AnalogueInputs.First(one => one.Tag == tag));
    }

    private (UnitScan Unit, Output Output) OutputElsewhere(Output output)
    {
        (UnitScan other, string tag) = Elsewhere(output.Tag);
        return (other, other.Unit.Outputs.First(one => one.Tag == tag));
    }
}
