using System.Collections.Immutable;
using Sequencer.Language.Programs;
using Sequencer.Language.Syntax;
using Sequencer.Language.Units;

namespace Sequencer.Language.Binding;

/// <summary>Steps, what they do, and the ways between them.</summary>
internal sealed class ProcedureBinder
{
    /// <summary>The largest IEC 61131-3 INT: what a step's number is shown and recorded in.</summary>
    public const int LargestStepNumber = 32_767;

    /// <summary>More turns than any batch has.</summary>
    private const int MostTimes = 10_000;

    private readonly BindingContext _context;
    private readonly AmountBinder _amounts;
    private readonly DeclarationBinder _declarations;
    private readonly DoseBinder _doses;
    private readonly AmountDoseBinder _amountDoses;
    private readonly ClaimBinder _claims;
    private readonly StartBinder _starts;
    private readonly List<Transition> _transitions = [];
    private readonly List<Step> _steps = [];

    public ProcedureBinder(BindingContext context, AmountBinder amounts, DeclarationBinder declarations, ClaimBinder claims)
    {
        _claims = claims;
        _starts = new StartBinder(context);
        _context = context;
        _amounts = amounts;
        _declarations = declarations;
        _doses = new DoseBinder(context, amounts, declarations);
        _amountDoses = new AmountDoseBinder(context, amounts, declarations, _doses);
    }

    /// <summary>The numbers of all steps, so that any line may name any of them.</summary>
    public void Declare(ProgramOutline outline)
    {
        Dictionary<int, Text.SourceSpan> first = [];
        foreach (PlacedSyntax<StepSyntax> header in outline.Steps.Select(step => step.Header).OfType<PlacedSyntax<StepSyntax>>())
        {
            Text.SourceSpan span = header.Place.At(header.Syntax.Number);
            if (_amounts.Count(header.Syntax.Number, 1, LargestStepNumber, header.Place) is not int number)
            {
                _context.StepsMayBeMissing = true;
            }
            else if (!first.TryAdd(number, span))
            {
                _context.Report(NameDiagnostics.StepTwice(span, number, first[number]));
            }
        }

        _context.Steps.UnionWith(first.Keys);
        _context.StepsMayBeMissing |= outline.StepsMayBeMissing;
        DeclarePrompts(outline);
        _context.AmountDoses = outline.Steps.Exists(step => step.HasMalformedLine)
            ? null
            : outline.Steps
                .SelectMany(step => step.Lines.Select(line => line.Syntax).OfType<AmountDoseSyntax>().Select(dose => (dose.Name.Text, NumberOf(step))))
                .Where(pair => pair.Item2 is not null)
                .ToLookup(pair => pair.Text, pair => pair.Item2 ?? 0);
    }

    public (ImmutableArray<Step> Steps, ImmutableArray<Transition> Transitions) Bind(ProgramOutline outline)
    {
        int join = 0;
        for (int index = 0; index <= outline.Steps.Count; index++)
        {
            for (; join < outline.Joins.Count && outline.Joins[join].StepsBefore == index; join++)
            {
                BindJoin(outline.Joins[join].Join.Syntax, outline.Joins[join].Join.Place);
            }

            if (index < outline.Steps.Count)
            {
                BindStep(outline.Steps[index]);
            }
        }

        return ([.. _steps], [.. _transitions]);
    }

    private void BindStep(StepOutline outline)
    {
        StepLines lines = new(_context);
        bool doses = outline.HasMalformedLine || outline.Lines.Exists(line => line.Syntax is DoseSyntax);
        int? number = NumberOf(outline);
        foreach (PlacedSyntax<StepLineSyntax> line in outline.Lines)
        {
            BindLine(line, number, doses, lines);
        }

        Condition? onlyIf = outline.Header is { } first ? _declarations.Conditions.BindOptional(first.Syntax.OnlyIf, first.Place) : null;
        if (outline.Header is not { } head || number is not int known)
        {
            return;
        }

        if (lines.LimitSpan is null && !outline.HasMalformedLine)
        {
            _context.Report(StructureDiagnostics.LimitMissing(head.Place.At(head.Syntax), known));
        }

        if (lines.Limit is not null)
        {
            _steps.Add(new Step(
                known, head.Syntax.Title.Text, outline.Documentation, outline.State, onlyIf, [.. lines.Actions], lines.Expected, lines.Limit, head.Place.At(head.Syntax))
            {
                Claims = [.. lines.Claims],
                Asks = [.. lines.Asks],
                RestartAt = lines.RestartAt,
            });
        }
    }

    private void DeclarePrompts(ProgramOutline outline)
    {
        foreach (PlacedSyntax<StepLineSyntax> line in outline.Steps.SelectMany(step => step.Lines))
        {
            if (line.Syntax is PromptSyntax prompt
                && _context.Symbols.Declare(prompt.Name.Text, SymbolKind.Prompt, null, line.Place, line.Place.At(prompt.Name)))
            {
                _context.Answers[prompt.Name.Text] = [.. prompt.Answers.Select(answer => answer.Text)];
            }
        }
    }

    private static int? NumberOf(StepOutline outline) =>
        outline.Header is { } header && header.Syntax.Number.Value.CompareTo(LargestStepNumber) <= 0
            ? (int)header.Syntax.Number.Value.ToInt64()
            : null;

    private void BindLine(PlacedSyntax<StepLineSyntax> line, int? step, bool doses, StepLines lines)
    {
        LinePlace place = line.Place;
        switch (line.Syntax)
        {
            case DriveSyntax drive:
                foreach (DriveAction? action in Drives(drive, place, step))
                {
                    lines.Add(action);
                }

                break;
            case DoseSyntax dose:
                lines.Add(_doses.Bind(dose, place));
                break;
            case AmountDoseSyntax dose:
                lines.Add(_amountDoses.Bind(dose, place));
                break;
            case KeepSyntax keep:
                lines.Add(Keep(keep, place));
                break;
            case SetSyntax set:
                lines.Add(_declarations.AnalogueOutputs.Bind(set, place));
                break;
            case RampSyntax ramp:
                lines.Add(_declarations.AnalogueOutputs.Bind(ramp, place));
                break;
            case PromptSyntax prompt:
                lines.Add(Prompt(prompt, place));
                break;
            case RecordSyntax record:
                lines.Add(Record(record, place));
                break;
            case ClaimSyntax claim:
                lines.Add(_claims.Bind(claim, place));
                break;
            case AskSyntax ask:
                lines.Add(_starts.Bind(ask, place));
                break;
            case RestartAtSyntax restart:
                lines.SetRestart(_declarations.Facts.Step(restart.Step, place) is int again ? new RestartPoint(again, place.At(restart)) : null);
                break;
            case ExpectSyntax expect:
                Duration? expected = _amounts.Time(expect.Time, place);
                lines.Expect(expected, place.At(expect));
                break;
            case LimitSyntax limit:
                lines.SetLimit(Limit(limit, place), place.At(limit));
                break;
            case GoSyntax go:
                Condition? when = _declarations.Conditions.Bind(go.When, place, new ConditionUse(false, doses) { Step = step });
                AddTransition(step is int from ? [from] : null, Steps(go.Targets, place), when, place.At(go), Times(go.AtMost, place));
                break;
            default:
                throw new System.Diagnostics.UnreachableException(line.Syntax.GetType().Name);
        }
    }

    private void BindJoin(JoinSyntax join, LinePlace place)
    {
        Condition? when = _declarations.Conditions.Bind(join.When, place, new ConditionUse(false, true));
        AddTransition(Steps(join.Sources, place), Steps(join.Targets, place), when, place.At(join));
    }

    private void AddTransition(ImmutableArray<int>? from, ImmutableArray<int>? to, Condition? when, Text.SourceSpan span, WayCount? atMost = null)
    {
        if (from is not null && to is not null && when is not null)
        {
            _transitions.Add(new Transition(from.Value, to.Value, when, span) { AtMost = atMost });
        }
    }

    private ImmutableArray<int>? Steps(ImmutableArray<NumberSyntax> numbers, LinePlace place)
    {
        ImmutableArray<int>.Builder steps = ImmutableArray.CreateBuilder<int>();
        foreach (NumberSyntax number in numbers)
        {
            if (_declarations.Facts.Step(number, place) is not int step)
            {
                continue;
            }

            if (steps.Contains(step))
            {
                _context.Report(NameDiagnostics.ListedTwice(place.At(number), place.At(number).Text.ToString()));
            }
            else
            {
                steps.Add(step);
            }
        }

        return steps.Count == numbers.Length ? steps.ToImmutable() : null;
    }

    /// <summary>A pair is driven by its two members, each while it is on duty.</summary>
    private DriveAction?[] Drives(DriveSyntax syntax, LinePlace place, int? step)
    {
        if (_context.Symbols.Find(syntax.Name.Text) is not { Kind: SymbolKind.Pair } symbol)
        {
            return [Drive(syntax, place, step)];
        }

        if (_declarations.Demand<DutyPair>(symbol, place.At(syntax.Name)) is not { } pair)
        {
            return [];
        }

        DriveAction? first = Drive(syntax with { Name = syntax.Name with { Text = pair.First.Tag } }, place, step);
        Condition? OnDuty(Condition? during, bool isFirst)
        {
            DutyFact duty = new(pair.Name, isFirst, place.At(syntax));
            return first?.On != true ? during : during is null ? duty : new AllOf([duty, during], during.Span);
        }

        return first is null
            ? []
            : [first with { While = OnDuty(first.While, true) }, first with { Output = pair.Second, While = OnDuty(first.While, false) }];
    }

    private DriveAction? Drive(DriveSyntax syntax, LinePlace place, int? step)
    {
        Duration? after = _amounts.TimeOrNothing(syntax.After, place);
        Duration? length = _amounts.Time(syntax.For, place);
        ConditionUse use = new(false, false) { Step = step };
        Condition? each = _declarations.Conditions.BindOptional(syntax.AtEach, place, use);
        Condition? during = _declarations.Conditions.BindOptional(syntax.While, place, use);
        Condition? until = _declarations.Conditions.BindOptional(syntax.Until, place, use);
        if (each is not (null or EdgeFact))
        {
            _context.Report(StepActionDiagnostics.EdgeNeeded(each.Span));
        }

        Symbol? symbol = _declarations.ResolveDriven(syntax.Name, place, shared: true);
        if (symbol is null || !DeviceWords.Fits(_context, symbol, syntax.Verb, place, true) || _declarations.Demand<Output>(symbol, place.At(syntax.Name)) is not { } output)
        {
            return null;
        }

        return after is null
            ? null
            : new DriveAction(output, DeviceWords.MeansOn(syntax.Verb), after.Value, length, during, until, place.At(syntax))
            {
                OnceABatch = syntax.OnceABatch,
                AtEach = each as EdgeFact,
                AtOnce = symbol.Unit is null && !_context.SharedOutputs.ContainsKey(symbol.Name) && syntax.After is null && syntax.For is null,
            };
    }

    private WayCount? Times(TimesSyntax? syntax, LinePlace place) =>
        syntax is not null && _amounts.Count(syntax.Most, 1, MostTimes, place) is int most
            ? new WayCount(most, Reactions.Of(syntax.Reaction, Reaction.Hold), syntax.Message.Text, place.At(syntax))
            : null;

    private KeepAction? Keep(KeepSyntax syntax, LinePlace place)
    {
        int? until = _declarations.Facts.Step(syntax.Until, place);
        Symbol? symbol = _declarations.ResolveDriven(syntax.Name, place);
        if (symbol is null || !DeviceWords.Fits(_context, symbol, syntax.Position, place) || _declarations.Demand<Output>(symbol, place.At(syntax.Name)) is not { } output)
        {
            return null;
        }

        return until is int step ? new KeepAction(output, DeviceWords.MeansOn(syntax.Position), step, place.At(syntax)) : null;
    }

    private PromptAction? Prompt(PromptSyntax syntax, LinePlace place)
    {
        foreach (TextSyntax answer in syntax.Answers.Where((answer, index) => syntax.Answers.Take(index).Any(before => before.Text == answer.Text)))
        {
            _context.Report(NameDiagnostics.ListedTwice(place.At(answer), answer.Text));
        }

        return _amounts.Time(syntax.Limit, place) is { } limit
            ? new PromptAction(
                syntax.Name.Text,
                syntax.Question.Text,
                [.. syntax.Answers.Select(answer => answer.Text)],
                syntax.Role.Text,
                limit,
                Reactions.Of(syntax.Reaction, Reaction.Hold),
                syntax.Message.Text,
                place.At(syntax))
            : null;
    }

    private RecordAction? Record(RecordSyntax syntax, LinePlace place)
    {
        if (_declarations.Quantities.Bind(place, default, [], syntax.Value) is not [{ } value])
        {
            return null;
        }

        if (value is LiteralQuantity or SumQuantity)
        {
            _context.Report(StepActionDiagnostics.NothingToRecord(value.Span));
            return null;
        }

        return new RecordAction(syntax.Title.Text, value, place.At(syntax));
    }

    private StepLimit? Limit(LimitSyntax syntax, LinePlace place)
    {
        Duration? time = _amounts.Time(syntax.Time, place);
        int? goTo = syntax.GoTo is null ? null : _declarations.Facts.Step(syntax.GoTo, place);
        return time is null || (goTo is null && syntax.GoTo is not null)
            ? null
            : new StepLimit(
                time.Value,
                Reactions.Of(syntax.Reaction, Reaction.Alarm),
                syntax.Reaction is not null ? null : goTo is int step ? [step] : [],
                syntax.Message.Text,
                place.At(syntax));
    }
}
