using System.Collections.Immutable;
using Sequencer.Language.Parsing;
using Sequencer.Language.Programs;
using Sequencer.Language.Syntax;
using Sequencer.Language.Units;
using Sequencer.Text;

namespace Sequencer.Language.Binding;

/// <summary>
/// Statements to a program: names resolved, units and ranges checked. Reports SEQ0120 to SEQ0130, SEQ02xx
/// and SEQ03xx. With errors about, the result holds what could be bound and is no program to run.
/// </summary>
internal sealed class ProgramBinder
{
    private readonly ProgramOutline _outline;
    private readonly BindingContext _context;
    private readonly AmountBinder _amounts;
    private readonly DeclarationBinder _declarations;
    private readonly ProtectionBinder _protections;
    private readonly AlarmBinder _alarms;
    private readonly ClaimBinder _claims;
    private readonly RequirementBinder _requirements;

    private readonly ProcedureBinder _procedure;
    private List<PlacedSyntax<DeclarationSyntax>> _declared = [];

    /// <param name="parsed">The whole file.</param>
    /// <param name="scanMilliseconds">The site's scan period.</param>
    /// <param name="site">Where the unit finds others, and is found.</param>
    /// <param name="diagnostics">Where mistakes go.</param>
    public ProgramBinder(ParsedProgram parsed, int scanMilliseconds, SiteNames site, DiagnosticBag diagnostics)
    {
        _outline = OutlineReader.Read(parsed, diagnostics);
        string unit = _outline.Unit?.Syntax.Name.Text ?? string.Empty;
        _context = new BindingContext(_outline.Source, unit, scanMilliseconds, site, diagnostics);
        _amounts = new AmountBinder(_context);
        _declarations = new DeclarationBinder(_context, _amounts);
        _protections = new ProtectionBinder(_context, _amounts, _declarations);
        _alarms = new AlarmBinder(_context, _amounts, _declarations, _protections);
        _requirements = new RequirementBinder(_context, _amounts, _declarations);
        _claims = new ClaimBinder(_context, _amounts, _declarations);
        _procedure = new ProcedureBinder(_context, _amounts, _declarations, _claims);
        if (unit.Length == 0)
        {
            site.UnitsMayBeMissing = true;
        }
        else
        {
            site.Add(new UnitNames(unit, _context, _declarations));
        }
    }

    /// <summary>What other units read of this one; complete when all are bound.</summary>
    public IReadOnlySet<string> ReadElsewhere => _context.ReadElsewhere;

    /// <summary>All names, of this unit and then of the others, before anything is bound.</summary>
    public void Declare()
    {
        _declared = DeclareNames();
        _procedure.Declare(_outline);
    }

    public UnitProgram Bind()
    {
        Duration wait = _outline.Restart is { } restart ? _amounts.TimeOrNothing(restart.Syntax.Wait, restart.Place) ?? default : default;
        _context.Overridable.UnionWith(_outline.Overrides.Select(waiver => waiver.Syntax.Protection.Text));
        UnitProgram program = Declarations(_declared) with { RestartWait = wait };
        (ImmutableArray<Step> steps, ImmutableArray<Transition> transitions) = _procedure.Bind(_outline);
        OverrideBinder overrides = new(_context, _amounts);
        StartBinder starts = new(_context);
        return program with
        {
            Overrides = [.. _outline.Overrides.Select(waiver => overrides.Bind(waiver.Syntax, waiver.Place)).OfType<Override>()],
            StartConditions = [.. _outline.Starts.Select(start => _requirements.Bind(start.Syntax, start.Place)).OfType<StartCondition>()],
            Calibrations = [.. _outline.Calibrations.Select(calibrate => overrides.Bind(calibrate.Syntax, calibrate.Place, _declarations)).OfType<Calibration>()],
            Askers = [.. _outline.Asked.SelectMany(asked => starts.Bind(asked.Syntax, asked.Place))],
            HeldLimit = HeldLimit(),
            HandAdvance = _outline.Advance is { } advance ? new HandAdvance(advance.Syntax.Role.Text, advance.Place.At(advance.Syntax)) : null,
            Steps = steps,
            Transitions = transitions,
        };
    }

    private HeldLimit? HeldLimit() => _outline.HeldLimit is { } held && _amounts.Time(held.Syntax.Time, held.Place) is { } time
        ? new HeldLimit(time, Reactions.Of(held.Syntax.Reaction, Reaction.Alarm), held.Syntax.Message.Text, held.Place.At(held.Syntax))
        : null;

    /// <summary>The declarations whose names were free.</summary>
    private List<PlacedSyntax<DeclarationSyntax>> DeclareNames()
    {
        _outline.PoisonedNames.ForEach(_context.Symbols.Poison);
        if (_outline.Unit is { } unit)
        {
            _context.Symbols.Declare(unit.Syntax.Name.Text, SymbolKind.Unit, null, unit.Place, unit.Place.At(unit.Syntax.Name));
        }

        foreach (SharedSyntax shared in _outline.Declarations.Select(declaration => declaration.Syntax).OfType<SharedSyntax>())
        {
            ClaimBinder.Declare(shared, _context);
        }

        return _outline.Declarations.FindAll(declaration => _context.Symbols.Declare(
            declaration.Syntax.Name.Text,
            Symbol.KindOf(declaration.Syntax),
            declaration.Syntax,
            declaration.Place,
            declaration.Place.At(declaration.Syntax.Name)));
    }

    private UnitProgram Declarations(List<PlacedSyntax<DeclarationSyntax>> declared)
    {
        ImmutableArray<object?> bound = [.. declared.Select(Bind)];
        _declarations.ReportDuplicateAddresses();
        return new UnitProgram
        {
            Source = _outline.Source,
            Name = _outline.Unit?.Syntax.Name.Text ?? string.Empty,
            Title = _outline.Unit?.Syntax.Title.Text ?? string.Empty,
            Span = _outline.Unit is { } unit ? unit.Place.At(unit.Syntax) : _outline.Source.At(0, 0),
            AnalogueInputs = [.. bound.OfType<AnalogueInput>()],
            SwitchInputs = [.. bound.OfType<SwitchInput>()],
            Outputs = [.. bound.OfType<Output>()],
            AnalogueOutputs = [.. bound.OfType<AnalogueOutput>()],
            Reagents = [.. bound.OfType<Reagent>()],
            Parameters = [.. bound.OfType<Parameter>()],
            Latches = [.. bound.OfType<Latch>()],
            Counts = [.. bound.OfType<Count>()],
            Votes = [.. bound.OfType<Vote>()],
            Pairs = [.. bound.OfType<DutyPair>()],
            Shared = [.. bound.OfType<SharedEquipment>()],
            Groups = [.. bound.OfType<ProtectionGroup>()],
            Facts = [.. bound.OfType<PublishedFact>()],
            Interlocks = [.. bound.OfType<Interlock>()],
            Exclusions = [.. bound.OfType<Exclusion>(), .. bound.OfType<DutyPair>().Select(Apart)],
            Permissives = [.. bound.OfType<Permissive>()],
            Trips = [.. bound.OfType<Trip>()],
            Alarms = [.. bound.OfType<OperatorAlarm>()],
            Reals = [.. bound.OfType<Real>()],
            Assumptions = [.. bound.OfType<AssumptionClause>()],
            Requirements = [.. bound.OfType<RequirementClause>()],
        };
    }

    /// <summary>Never both, in manual neither.</summary>
    private static Exclusion Apart(DutyPair pair) => new(pair.Name, pair.Title, [pair.First, pair.Second], default, pair.Span);

    private object? Bind(PlacedSyntax<DeclarationSyntax> declaration)
    {
        LinePlace place = declaration.Place;
        return declaration.Syntax switch
        {
            GroupSyntax group => ProtectionBinder.Bind(group, place),
            SharedSyntax shared => _claims.Bind(shared, place),
            LatchSyntax latch => _protections.Bind(latch, place),
            FactSyntax fact => _protections.Bind(fact, place),
            InterlockSyntax interlock => _protections.Bind(interlock, place),
            ExclusionSyntax exclusion => _protections.Bind(exclusion, place),
            PermissiveSyntax permissive => _protections.Bind(permissive, place),
            TripSyntax trip => _protections.Bind(trip, place),
            AlarmSyntax alarm => _alarms.Bind(alarm, place),
            AssumeSyntax assume => _requirements.Bind(assume, place),
            RequireSyntax require => _requirements.Bind(require, place),
            EquipmentSyntax => null,
            _ when _context.Symbols.Find(declaration.Syntax.Name.Text) is { } symbol => _declarations.Demand<object>(symbol, symbol.Span),
            _ => throw new System.Diagnostics.UnreachableException(declaration.Syntax.GetType().Name),
        };
    }
}
