using System.Collections.Immutable;
using Sequencer.Language.Programs;
using Sequencer.Language.Syntax;

namespace Sequencer.Language.Binding;

/// <summary>The facts that a condition is made of: a name and what is asked of it, a step, a state.</summary>
internal sealed class FactBinder
{
    private readonly BindingContext _context;
    private readonly AmountBinder _amounts;
    private readonly DeclarationBinder _declarations;

    public FactBinder(BindingContext context, AmountBinder amounts, DeclarationBinder declarations)
    {
        _context = context;
        _amounts = amounts;
        _declarations = declarations;
    }

    public Condition? Bind(NameExpression name, LinePlace place, ConditionUse use)
    {
        if (name.Aspect?.Text == "started" && !use.InputsOnly)
        {
            return new StartBinder(_context).Bind(name, place);
        }

        Symbol? symbol = Resolve(name, place);
        if (symbol is null)
        {
            return null;
        }

        if (use.InputsOnly && (symbol.Unit is not null || symbol.Kind is not (SymbolKind.SwitchInput or SymbolKind.AnalogueInput)))
        {
            _context.Report(NameDiagnostics.NotAnInput(place.At(name)));
            return null;
        }

        Text.SourceSpan span = place.At(name);
        if (name.Aspect?.Text == "overridden")
        {
            if (!_context.Overridable.Contains(symbol.Name))
            {
                _context.Report(GuardDiagnostics.NothingOverrides(span, symbol));
                return null;
            }

            return new OverrideFact(symbol.Name, span);
        }

        return symbol.Kind switch
        {
            SymbolKind.SwitchInput => _declarations.Demand<SwitchInput>(symbol, span) is { } input ? new SwitchFact(input, span) : null,
            SymbolKind.AnalogueInput => _declarations.Demand<AnalogueInput>(symbol, span) is { } reading ? new UsableFact(reading, span) : null,
            SymbolKind.Pair => _declarations.Demand<DutyPair>(symbol, span) is { } pair ? PairFact(pair, name.Aspect?.Text, span) : null,
            SymbolKind.Vote => _declarations.Demand<Vote>(symbol, span) is { } vote ? new VoteFact(vote, span) : null,
            SymbolKind.Latch => new LatchFact(symbol.FullName, span),
            SymbolKind.Fact => new NamedFact(symbol.FullName, span),
            SymbolKind.Shared => new OwnerFact(
                QualifiedName.Of(symbol.Unit ?? _context.UnitName, symbol.Name), name.Aspect?.Text == "granted" ? _context.UnitName : null, span),
            SymbolKind.Trip => new TripFact(symbol.FullName, span),
            _ => BindOutput(name, symbol, place, use),
        };
    }

    public Condition? Bind(AnsweredExpression answered, LinePlace place, ConditionUse use)
    {
        if (_context.Symbols.Resolve(answered.Name, place, symbol => symbol.Kind == SymbolKind.Prompt, "a prompt") is not { } prompt)
        {
            return null;
        }

        Text.SourceSpan span = place.At(answered);
        if (use.InputsOnly)
        {
            _context.Report(NameDiagnostics.NotAnInput(span));
            return null;
        }

        ImmutableArray<string> answers = _context.Answers[prompt.Name];
        if (answered.Answer is null)
        {
            return new AnyOf([.. answers.Select((_, index) => new AnsweredFact(prompt.Name, index + 1, span))], span);
        }

        int answer = answers.IndexOf(answered.Answer.Text);
        if (answer < 0)
        {
            _context.Report(StepActionDiagnostics.NoSuchAnswer(place.At(answered.Answer), prompt, answers));
            return null;
        }

        return new AnsweredFact(prompt.Name, answer + 1, span);
    }

    public StepFact? Bind(StepExpression step, LinePlace place, ConditionUse use)
    {
        if (use.InputsOnly)
        {
            _context.Report(NameDiagnostics.NotAnInput(place.At(step)));
            return null;
        }

        if (step.Unit is { } unit && unit.Text != _context.UnitName)
        {
            return _context.Symbols.ResolveUnit(unit.Text, place.At(unit)) is { } other && Step(step.Step, place, other.Context) is int there
                ? new StepFact(there, place.At(step), unit.Text)
                : null;
        }

        return Step(step.Step, place, _context) is int number ? new StepFact(number, place.At(step)) : null;
    }

    public StateFact? Bind(StateExpression state, LinePlace place, ConditionUse use)
    {
        if (use.InputsOnly)
        {
            _context.Report(NameDiagnostics.NotAnInput(place.At(state)));
            return null;
        }

        ProceduralState asked = Enum.Parse<ProceduralState>(state.State.Text);
        if (state.Unit is { } unit && unit.Text != _context.UnitName)
        {
            return _context.Symbols.ResolveUnit(unit.Text, place.At(unit)) is null ? null : new StateFact(asked, place.At(state), unit.Text);
        }

        return new StateFact(asked, place.At(state));
    }

    /// <summary>The number of a step that exists.</summary>
    public int? Step(NumberSyntax number, LinePlace place) => Step(number, place, _context);

    private int? Step(NumberSyntax number, LinePlace place, BindingContext unit)
    {
        int? step = _amounts.Count(number, 1, ProcedureBinder.LargestStepNumber, place);
        if (step is int known && !unit.Steps.Contains(known))
        {
            if (!unit.StepsMayBeMissing)
            {
                _context.Report(NameDiagnostics.NoSuchStep(place.At(number), known, NearestStep(known, unit)));
            }

            return null;
        }

        return step;
    }

    private static int? NearestStep(int number, BindingContext unit) => unit.Steps.Count == 0 ? null : unit.Steps.MinBy(step => Math.Abs(step - number));

    private Symbol? Resolve(NameExpression name, LinePlace place)
    {
        switch (name.Aspect?.Text)
        {
            case null:
                if (_context.Symbols.Find(name.Name.Text) is { Kind: SymbolKind.AnalogueInput or SymbolKind.Parameter or SymbolKind.Count or SymbolKind.Real })
                {
                    _context.Report(QuantityDiagnostics.AmountForCondition(place.At(name)));
                    return null;
                }

                return _context.Symbols.Resolve(
                    name.Name,
                    place,
                    symbol => symbol.IsOutput || symbol.Kind is SymbolKind.SwitchInput or SymbolKind.Latch or SymbolKind.Fact or SymbolKind.Vote or SymbolKind.Pair,
                    "a switch, a valve, a motor, a latch, a published fact, a vote or a comparison");
            case "latched":
                return _context.Symbols.Resolve(name.Name, place, symbol => symbol.Kind == SymbolKind.Trip, "a trip");
            case "overridden":
                return _context.Symbols.Resolve(
                    name.Name, place, symbol => symbol.Kind is SymbolKind.Interlock or SymbolKind.Trip, "an interlock or a trip");
            case "granted" or "taken":
                return _context.Symbols.Resolve(name.Name, place, symbol => symbol.Kind == SymbolKind.Shared, "shared equipment");
            case "usable":
                return _context.Symbols.Resolve(name.Name, place, symbol => symbol.Kind == SymbolKind.AnalogueInput, "a measured input");
            default:
                return _context.Symbols.Resolve(name.Name, place, symbol => symbol.IsOutput || symbol.Kind == SymbolKind.Pair, "a valve or a motor");
        }
    }

    /// <summary>One of the two, whichever; a pair has failed when both have.</summary>
    private static Condition PairFact(DutyPair pair, string? aspect, Text.SourceSpan span)
    {
        OutputFactKind kind = aspect switch
        {
            "proved" => OutputFactKind.Proved,
            "failed" => OutputFactKind.Failed,
            _ => OutputFactKind.On,
        };
        System.Collections.Immutable.ImmutableArray<Condition> members = [new OutputFact(pair.First, kind, span), new OutputFact(pair.Second, kind, span)];
        Condition fact = kind == OutputFactKind.Failed ? new AllOf(members, span) : new AnyOf(members, span);
        return aspect is "closed" or "stopped" ? new Negation(fact, span) : fact;
    }

    private Condition? BindOutput(NameExpression name, Symbol symbol, LinePlace place, ConditionUse use)
    {
        Text.SourceSpan span = place.At(name);
        string? aspect = name.Aspect?.Text;
        if (aspect is "open" or "closed" or "running" or "stopped" && !DeviceWords.Fits(_context, symbol, name.Aspect, place))
        {
            return null;
        }

        if (aspect is "proved" && symbol.Unit is { } unit)
        {
            _context.Report(UnitDiagnostics.ProofOfAnother(span, unit, symbol));
            return null;
        }

        if (aspect is "proved" or "failed" && symbol.Syntax is OutputSyntax { Confirm: null })
        {
            _context.Report(NameDiagnostics.NothingConfirms(span, symbol, aspect));
            return null;
        }

        if (_declarations.Demand<Output>(symbol, span) is not { } output)
        {
            return null;
        }

        if (aspect is "dosed")
        {
            return Dosed(output, use, span);
        }

        OutputFactKind kind = aspect switch
        {
            "proved" => OutputFactKind.Proved,
            "failed" => OutputFactKind.Failed,
            _ => OutputFactKind.On,
        };
        OutputFact fact = new(output, kind, span);
        return aspect is "closed" or "stopped" ? new Negation(fact, span) : fact;
    }

    /// <summary>Of the step's own dose by amount, or of the only one there is.</summary>
    private DosedFact? Dosed(Output output, ConditionUse use, Text.SourceSpan span)
    {
        int[] steps = [.. _context.AmountDoses?[output.Tag].Distinct() ?? []];
        if (use.Step is int own && steps.Contains(own))
        {
            return new DosedFact(output, own, span);
        }

        if (steps.Length == 1 && use.Step is null)
        {
            return new DosedFact(output, steps[0], span);
        }

        if (_context.AmountDoses is not null)
        {
            _context.Report(StepActionDiagnostics.NoAmountDosed(span, output.Tag, steps.Length > 1));
        }

        return null;
    }
}
