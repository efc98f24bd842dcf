using Sequencer.Language.Programs;
using Sequencer.Language.Syntax;
using Sequencer.Language.Units;

namespace Sequencer.Language.Binding;

/// <summary>A dose toward an end point: what is pulsed, how much, until which reading.</summary>
internal sealed class DoseBinder
{
    private const int MostPulses = 1_000;
    private readonly BindingContext _context;
    private readonly AmountBinder _amounts;
    private readonly DeclarationBinder _declarations;

    public DoseBinder(BindingContext context, AmountBinder amounts, DeclarationBinder declarations)
    {
        _context = context;
        _amounts = amounts;
        _declarations = declarations;
    }

    /// <summary>Null where a part was wrong.</summary>
    public DoseAction? Bind(DoseSyntax syntax, LinePlace place)
    {
        Output? output = Output(syntax.Name, place);
        AnalogueInput? signal = _declarations.ResolveReading(syntax.Signal, place);
        Duration? pulse = Pulse(syntax.Pulse, place);
        Duration? fine = Pulse(syntax.FinePulse, place);
        Duration? wait = _amounts.Time(syntax.Wait, place);
        Rational? maximum = _amounts.Positive(syntax.Maximum, Dimension.Volume, place);
        int? pulses = _amounts.Count(syntax.NoResponsePulses, 1, MostPulses, place);
        if (signal is null)
        {
            return null;
        }

        CheckEffect(output, signal, syntax, place);
        Quantity? target = Target(syntax, signal, place);
        LiteralQuantity? fineWithin = ReadingChange.Bind(syntax.FineWithin, signal, place, _amounts, _declarations);
        LiteralQuantity? change = ReadingChange.Bind(syntax.NoResponseChange, signal, place, _amounts, _declarations);
        if (output is null || pulse is null || wait is null || maximum is null || pulses is null || target is null || change is null
            || (syntax.FinePulse is not null && (fine is null || fineWithin is null)))
        {
            return null;
        }

        return new DoseAction(
            output,
            signal,
            target,
            pulse.Value,
            fine,
            fineWithin,
            wait.Value,
            new LiteralQuantity(maximum.Value, Dimension.Volume, place.At(syntax.Maximum)),
            Reactions.Of(syntax.MaximumReaction, Reaction.Hold),
            change,
            pulses.Value,
            Reactions.Of(syntax.NoResponseReaction, Reaction.Hold),
            place.At(syntax));
    }

    /// <summary>An output that is said to deliver something.</summary>
    public Output? Output(WordSyntax name, LinePlace place)
    {
        Symbol? symbol = _declarations.ResolveDriven(name, place);
        if (symbol?.Syntax is OutputSyntax { Delivers: null })
        {
            _context.Report(NameDiagnostics.DeliversNothing(place.At(name), symbol));
            return null;
        }

        return symbol is null ? null : _declarations.Demand<Output>(symbol, place.At(name));
    }

    private void CheckEffect(Output? output, AnalogueInput signal, DoseSyntax syntax, LinePlace place)
    {
        if (output?.Delivery?.Reagent is { } reagent && !ReferenceEquals(reagent.Signal, signal) && (reagent.Signal is not null || !EffectIsWritten(reagent)))
        {
            _context.Report(NameDiagnostics.NoEffect(place.At(syntax.Signal), reagent.Name, signal.Tag, reagent.Span));
        }
    }

    /// <summary>An effect whose reading failed to bind has been reported already.</summary>
    private bool EffectIsWritten(Reagent reagent) => _context.Symbols.Find(reagent.Name)?.Syntax is ReagentSyntax { Signal: not null };

    /// <summary>The length of a pulse; told where it is no whole number of scans.</summary>
    public Duration? Pulse(AmountSyntax? amount, LinePlace place)
    {
        Duration? pulse = _amounts.Time(amount, place);
        if (amount is not null && pulse is { } time && time.Milliseconds % _context.ScanMilliseconds != 0)
        {
            long given = time.Scans(_context.ScanMilliseconds) * _context.ScanMilliseconds;
            _context.Report(QuantityDiagnostics.PulseRounded(place.At(amount), time.Milliseconds, given, _context.ScanMilliseconds));
        }

        return pulse;
    }

    private Quantity? Target(DoseSyntax syntax, AnalogueInput signal, LinePlace place)
    {
        List<WrittenLiteral> literals = [];
        Quantity? target = _declarations.Quantities.Bind(place, syntax.Target, signal, literals);
        if (target is not null)
        {
            _declarations.Checks.Target(new ReadingQuantity(signal, place.At(syntax.Signal)), target, literals);
        }

        return target;
    }
}
