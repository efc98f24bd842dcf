using Sequencer.Control.TransitionSystems;
using Sequencer.Simulation.Loop;
using Sequencer.Simulation.Scenarios;
using Sequencer.Text;

namespace Sequencer.Simulation.Running;

/// <summary>Binds events and deeds to a loop; null, with diagnostics, where a name or value does not fit.</summary>
internal sealed class ScenarioBinder(ClosedLoop loop, DiagnosticBag diagnostics)
{
    public ScenarioNames Names { get; } = new(loop, diagnostics);

    public EventWatch? Watch(Moment moment) => Condition(moment.Event, moment.Span) is Func<ClosedLoop, bool> condition
        ? new EventWatch(condition, moment.Occurrence, moment.DelaySeconds)
        : null;

    public BoundDeed? Bind(ScriptedAction action)
    {
        EventWatch? watch = Watch(action.Moment);
        BoundDeed? bound = Deed(action, watch);
        return watch is null ? null : bound;
    }

    public Answering? Bind(OperatorRule rule)
    {
        if (Names.Prompt(rule.Prompt, rule.Span) is not { } prompt
            || Names.OperatorInput(prompt.Input, rule.Span) is not Variable input
            || loop.Find(prompt.Asks) is not ValueSource asks
            || Names.Answer(prompt, rule.Answer, rule.Span) is not int right)
        {
            return null;
        }

        if (rule.Manner == OperatorManner.Wrong)
        {
            return Names.Answer(prompt, rule.WrongAnswer, rule.Span) is int wrong ? new Answering(rule, asks, input.Index, wrong) : null;
        }

        return new Answering(rule, asks, input.Index, right);
    }

    private Func<ClosedLoop, bool>? Condition(Event happening, SourceSpan place)
    {
        switch (happening)
        {
            case Event.Start:
                return static _ => true;
            case Event.StepActive active:
                return Names.Step(active.Unit, active.Step, place) is StepPlace step ? loop => loop.State(step.Place) != 0 : null;
            case Event.StateReached reached:
                return Names.Unit(reached.Unit, place) is UnitPlaces unit ? loop => loop.State(unit.StatePlace) == (long)reached.State : null;
            case Event.PromptAsked asked:
                return Names.Prompt(asked.Prompt, place) is { } prompt && loop.Find(prompt.Asks) is ValueSource asks ? loop => loop.Value(asks) != 0 : null;
            case Event.OutputTurns turns:
                return Names.Output(turns.Output, place) is int output ? loop => loop.OutputOn(output) == turns.On : null;
            case Event.AlarmRaised raised:
                return Names.Alarm(raised.Alarm, place) is int alarm ? loop => loop.AlarmRaised(alarm) : null;
            case Event.ValueCrosses crosses:
                if (Names.Value(crosses.Name, place) is not ValueSource source || Names.InUnitOf(source, crosses.Bound, place) is not double bound)
                {
                    return null;
                }

                return crosses.Above ? loop => loop.Value(source) > bound : loop => loop.Value(source) < bound;
            default:
                throw new System.Diagnostics.UnreachableException($"no condition for {happening}");
        }
    }

    private BoundDeed? Deed(ScriptedAction action, EventWatch? watch)
    {
        watch ??= new EventWatch(static _ => false, 1, 0);
        string words = ActionWords.Of(action.Deed, loop.Plant.Faults);
        switch (action.Deed)
        {
            case Deed.Press press:
                return Names.OperatorInput(press.Input, action.Span) is Variable button
                    ? new BoundDeed(watch, words, run => run.Press(button.Index))
                    : null;
            case Deed.Set set:
                return Names.OperatorInput(set.Input, action.Span) is Variable input && Names.Integer(input, set.Value, action.Span) is long value
                    ? new BoundDeed(watch, words, run => run.Loop.SetInput(input.Index, value))
                    : null;
            case Deed.Answer answer:
                return Names.Prompt(answer.Prompt, action.Span) is { } prompt
                    && Names.Answer(prompt, answer.Words, action.Span) is int number
                    && Names.OperatorInput(prompt.Input, action.Span) is Variable asked
                    ? new BoundDeed(watch, words, run => run.Press(asked.Index, number))
                    : null;
            case Deed.Manual manual:
                return BindManual(manual, action.Span, watch, words);
            case Deed.Inject inject:
                return Names.Fault(inject.Fault, action.Span) is int injected
                    ? new BoundDeed(watch, words, run => run.Loop.Plant.Inject(injected))
                    : null;
            case Deed.Clear clear:
                return Names.Fault(clear.Fault, action.Span) is int cleared
                    ? new BoundDeed(watch, words, run => run.Loop.Plant.Clear(cleared))
                    : null;
            case Deed.LosePower lose:
                return new BoundDeed(watch, words, run => run.LosePower(lose.Seconds));
            default:
                throw new System.Diagnostics.UnreachableException($"no binding for {action.Deed}");
        }
    }

    private BoundDeed? BindManual(Deed.Manual manual, SourceSpan place, EventWatch watch, string words)
    {
        if (Names.OperatorInput(manual.Output + ".manual", place) is not Variable selected
            || Names.OperatorInput(manual.Output + ".manual.demand", place) is not Variable demand)
        {
            return null;
        }

        return new BoundDeed(watch, words, run =>
        {
            run.Loop.SetInput(selected.Index, manual.Mode == ManualMode.Automatic ? 0 : 1);
            run.Loop.SetInput(demand.Index, manual.Mode == ManualMode.On ? 1 : 0);
        });
    }
}
