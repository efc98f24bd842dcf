using Sequencer.Control.TransitionSystems;
using Sequencer.Language.Programs;
using Sequencer.Language.Units;
using Sequencer.Text;

namespace Sequencer.Lowering;

/// <summary>
/// What is taken for granted of the inputs. A bound on a rate is kept exactly by an envelope: the least
/// value so far plus what the rate allows since; a reading may exceed it by its tolerance.
/// A monitored one latches its breach and asks for its reaction.
/// </summary>
internal sealed class Assumptions
{
    private readonly UnitScan _scan;
    private readonly List<(AssumptionClause Clause, Expression Breached)> _breaches = [];

    public Assumptions(UnitScan scan)
    {
        _scan = scan;
        foreach (AssumptionClause clause in scan.Unit.Assumptions)
        {
            Lower(clause);
        }
    }

    public Expression Ask(Reaction reaction) =>
        _scan.Build.Or(_breaches.Where(breach => breach.Clause.Reaction == reaction).Select(breach => breach.Breached));

    private void Lower(AssumptionClause clause)
    {
        ExpressionBuilder build = _scan.Build;
        Origin origin = new(clause.Span);
        StatePurpose purpose = clause.Monitored ? StatePurpose.Control : StatePurpose.Monitor;
        Expression holds = clause.Fact switch
        {
            AssumedRate rate => Rate(_scan.Own(clause.Name), rate, purpose, origin),
            AssumedNever never => build.Not(ConditionLowering.Lower(
                _scan, never.Condition, new ConditionPlace(_scan.Own(clause.Name), purpose: purpose)).Surely),
            _ => throw new System.Diagnostics.UnreachableException($"no meaning of {clause.Fact.GetType().Name}"),
        };
        _scan.System.Assume(new Assumption(_scan.Own(clause.Name), clause.Title, holds, origin));
        if (!clause.Monitored)
        {
            return;
        }

        DeclaredState breached = _scan.System.State(_scan.Own($"{clause.Name}.breached"), false, retained: true, StatePurpose.Control, origin);
        Expression now = build.Or(build.Not(holds), build.And(breached.Current, build.Not(_scan.Commands.Reset)));
        breached.Next = now;
        _scan.System.Alarm(_scan.Own(clause.Name), $"Assumption not kept: {clause.Title}", now, origin);
        _breaches.Add((clause, now));
    }

    private Expression Rate(string name, AssumedRate rate, StatePurpose purpose, Origin origin)
    {
        ExpressionBuilder build = _scan.Build;
        Rational perScan = rate.PerSecond * new Rational(_scan.ScanMilliseconds, 1000) / rate.Input.Resolution;
        long fraction = (long)perScan.Denominator;
        long allowed = (long)perScan.Numerator;
        (Expression channel, Expression fault) = _scan.Signals.Channel(rate.Input);
        Expression value = build.Scale(rate.Rises ? fraction : -fraction, channel);
        return Envelope.Holds(_scan.System, name, value, fault, build.Constant(allowed), fraction * rate.Tolerance, purpose, origin);
    }
}
