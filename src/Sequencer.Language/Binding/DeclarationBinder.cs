using Sequencer.Language.Programs;
using Sequencer.Language.Syntax;
using Sequencer.Text;

namespace Sequencer.Language.Binding;

/// <summary>
/// Inputs, outputs, reagents and parameters, bound when they are first asked for, whatever the order of
/// declaration, so that every mention of one is the same object.
/// </summary>
internal sealed class DeclarationBinder
{
    /// <summary>How many declarations may lean on one another in a row (usable while ..., safe while ...).</summary>
    private const int LongestChain = 32;

    private readonly Dictionary<string, object?> _bound = new(StringComparer.Ordinal);
    private readonly HashSet<string> _inProgress = new(StringComparer.Ordinal);
    private readonly BindingContext _context;
    private readonly AddressBinder _addresses;
    private readonly SignalBinder _signals;
    private readonly VoteBinder _votes;
    private readonly CountBinder _counts;
    private readonly RealBinder _reals;
    private readonly PairBinder _pairs;

    public DeclarationBinder(BindingContext context, AmountBinder amounts)
    {
        _context = context;
        Facts = new FactBinder(context, amounts, this);
        Checks = new ComparisonChecks(context);
        Quantities = new QuantityBinder(context, amounts, this);
        Conditions = new ConditionBinder(context, amounts, Facts, Quantities, Checks);
        _addresses = new AddressBinder(context);
        _signals = new SignalBinder(context, amounts, this, _addresses);
        _votes = new VoteBinder(context, amounts, this);
        _counts = new CountBinder(context, amounts, this);
        _reals = new RealBinder(context, amounts, this);
        _pairs = new PairBinder(context, amounts, this);
        AnalogueOutputs = new AnalogueOutputBinder(context, amounts, this, _addresses);
    }

    public FactBinder Facts { get; }

    /// <summary>To be asked once, when all is bound.</summary>
    public void ReportDuplicateAddresses() => _addresses.ReportDuplicates();

    public AnalogueOutputBinder AnalogueOutputs { get; }

    public ComparisonChecks Checks { get; }

    public QuantityBinder Quantities { get; }

    public ConditionBinder Conditions { get; }

    /// <summary>The declaration behind a name; null where it was wrong, which has been reported.</summary>
    public T? Demand<T>(Symbol symbol, SourceSpan use)
        where T : class
    {
        if (_bound.TryGetValue(symbol.FullName, out object? known))
        {
            return known as T;
        }

        if (symbol.Unit is { } unit)
        {
            object? elsewhere = Qualified(unit, _context.Site.Find(unit)?.Declarations.Demand<object>(symbol with { Unit = null }, use));
            _bound[symbol.FullName] = elsewhere;
            return elsewhere as T;
        }

        if (_inProgress.Count >= LongestChain || !_inProgress.Add(symbol.Name))
        {
            _context.Report(NameDiagnostics.Circular(use, symbol.Name));
            return null;
        }

        object? bound = symbol.Syntax switch
        {
            AnalogueInputSyntax input => _signals.Bind(input, symbol.Place),
            SwitchInputSyntax input => _signals.Bind(input, symbol.Place),
            OutputSyntax output => _signals.Bind(output, symbol),
            AnalogueOutputSyntax output => AnalogueOutputs.Bind(output, symbol.Place),
            ReagentSyntax reagent => _signals.Bind(reagent, symbol.Place),
            CountSyntax count => _counts.Bind(count, symbol.Place),
            RealSyntax real => _reals.Bind(real, symbol.Place),
            VotedSyntax voted => _votes.Bind(voted, symbol.Place),
            PairSyntax pair => _pairs.Bind(pair, symbol.Place),
            ParameterSyntax parameter => _signals.Bind(parameter, symbol.Place),
            _ => throw new System.Diagnostics.UnreachableException($"{symbol.Kind} is not bound on demand"),
        };
        _inProgress.Remove(symbol.Name);
        _bound[symbol.Name] = bound;
        return bound as T;
    }

    /// <summary>What another unit declares, under the name that this one calls it by.</summary>
    private static object? Qualified(string unit, object? declaration) => declaration switch
    {
        AnalogueInput input => input with { Tag = QualifiedName.Of(unit, input.Tag) },
        SwitchInput input => input with { Tag = QualifiedName.Of(unit, input.Tag) },
        Output output => output with { Tag = QualifiedName.Of(unit, output.Tag) },
        Count count => count with { Name = QualifiedName.Of(unit, count.Name) },
        null => null,
        _ => throw new System.Diagnostics.UnreachableException($"{declaration.GetType().Name} is not published"),
    };

    /// <summary>A name of the kind asked for, bound.</summary>
    public T? Resolve<T>(WordSyntax? name, LinePlace place, Func<Symbol, bool> fits, string needed)
        where T : class =>
        name is not null && _context.Symbols.Resolve(name, place, fits, needed) is { } symbol ? Demand<T>(symbol, place.At(name)) : null;

    /// <summary>An output that this unit may drive.</summary>
    public Output? ResolveOutput(WordSyntax name, LinePlace place) =>
        ResolveDriven(name, place) is { } symbol ? Demand<Output>(symbol, place.At(name)) : null;

    /// <summary>The symbol of an output that this unit may drive; with <paramref name="shared"/> also one that another unit shares.</summary>
    public Symbol? ResolveDriven(WordSyntax name, LinePlace place, bool shared = false)
    {
        Symbol? symbol = _context.Symbols.Resolve(name, place, found => found.IsOutput, "a valve or a motor");
        if (symbol?.Unit is { } unit && !(shared && _context.Site.Find(unit)?.Context.SharedOutputs.ContainsKey(symbol.Name) == true))
        {
            _context.Report(UnitDiagnostics.DrivenByAnother(place.At(name), unit, symbol));
            return null;
        }

        return symbol;
    }

    public AnalogueOutput? ResolveAnalogueOutput(WordSyntax name, LinePlace place) =>
        Resolve<AnalogueOutput>(name, place, symbol => symbol.Kind == SymbolKind.AnalogueOutput, "an analogue output");

    public AnalogueInput? ResolveReading(WordSyntax? name, LinePlace place) =>
        Resolve<AnalogueInput>(name, place, symbol => symbol.Kind == SymbolKind.AnalogueInput, "a measured input");
}
