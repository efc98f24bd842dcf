using System.Collections.Immutable;
using Sequencer.Control.TransitionSystems;
using Sequencer.StructuredText.Parsing;
using Sequencer.StructuredText.Syntax;
using Sequencer.Text;

namespace Sequencer.StructuredText.Lowering;

/// <summary>
/// TON, TOF and TP as counted scans, by the timing diagrams of IEC 61131-3 (second edition) 2.5.2.3.4, from
/// memory. Time runs from the scan of the edge: ET is 0 there, and one scan period more in each scan after, up
/// to PT; an output that ends or begins after PT does so in the first scan with at least PT gone.
/// </summary>
internal sealed class TimerLowering
{
    /// <summary>The scans gone since the edge; with <see cref="Last"/>, IN at the call before, beside the standard's members.</summary>
    private const string Scans = "scans";
    private const string Last = "last";

    private readonly LoweringContext _context;
    private readonly ExpressionBuilder _builder;

    public TimerLowering(LoweringContext context)
    {
        _context = context;
        _builder = context.Builder;
    }

    /// <summary>The members of each timer.</summary>
    public static ImmutableArray<VariableSectionSyntax> Sections { get; } = ReadSections();

    public static bool IsTimer(string type) => type.ToUpperInvariant() is "TON" or "TOF" or "TP";

    /// <summary>One call, its inputs already given: once a scan, in every scan.</summary>
    public void Call(BlockInstance timer, ScanPoint point, SourceSpan span)
    {
        Store store = point.Store;
        if (point.IsConditional)
        {
            _context.Diagnostics.Add(StructuredTextDiagnostics.TimerCalledConditionally(span, timer.Path));
        }

        if (Preset(timer, store, span) is not { } preset)
        {
            _context.Diagnostics.Add(StructuredTextDiagnostics.PresetNotConstant(span, timer.Path));
            return;
        }

        long last = (Math.Max(0, preset) + _context.ScanMilliseconds - 1) / _context.ScanMilliseconds;
        Before before = new(
            Value(timer, "IN", store),
            timer.Slot(Last).Entry ?? _builder.False,
            timer.Slot("Q").Entry ?? _builder.False,
            _builder.Minimum(timer.Slot(Scans).Entry ?? _builder.Constant(0), _builder.Constant(last)),
            last);
        (Expression output, Expression scans) = timer.Type.ToUpperInvariant() switch
        {
            "TON" => OnDelay(before),
            "TOF" => OffDelay(before),
            _ => Pulse(before),
        };
        Write(timer, "Q", output, store);
        Write(timer, Scans, scans, store);
        Write(timer, Last, before.Input, store);
        Write(timer, "ET", _builder.Minimum(_builder.Scale(_context.ScanMilliseconds, scans), _builder.Constant(Math.Max(0, preset))), store);
    }

    /// <summary>Q once IN has been true for PT; ET falls to 0 with IN.</summary>
    private (Expression Output, Expression Scans) OnDelay(Before before)
    {
        Expression scans = _builder.IfThenElse(_builder.And(before.Input, before.LastInput), Later(before), _builder.Constant(0));
        return (_builder.And(before.Input, Elapsed(scans, before)), scans);
    }

    /// <summary>Q with IN, and for PT after it falls; ET stays at PT then, until IN comes again.</summary>
    private (Expression Output, Expression Scans) OffDelay(Before before)
    {
        Expression running = _builder.IfThenElse(before.LastOutput, Later(before), before.Scans);
        Expression scans = _builder.IfThenElse(_builder.Or(before.Input, before.LastInput), _builder.Constant(0), running);
        Expression delayed = _builder.And(_builder.Or(before.LastInput, before.LastOutput), _builder.Not(Elapsed(scans, before)));
        return (_builder.Or(before.Input, delayed), scans);
    }

    /// <summary>
    /// A rising IN gives Q for PT, whatever IN does meanwhile; ET stays at PT while IN is true, then 0. An edge
    /// in the very scan in which a pulse ends starts no other: the diagrams leave it open.
    /// </summary>
    private (Expression Output, Expression Scans) Pulse(Before before)
    {
        Expression zero = _builder.Constant(0);
        Expression later = Later(before);
        Expression ends = Elapsed(later, before);
        Expression begins = _builder.And(before.Input, _builder.Not(before.LastInput));
        Expression resting = _builder.IfThenElse(_builder.And(before.Input, before.LastInput), before.Scans, zero);
        Expression pulsing = _builder.IfThenElse(_builder.And(ends, _builder.Not(before.Input)), zero, later);
        Expression output = _builder.IfThenElse(
            before.LastOutput,
            _builder.Not(ends),
            _builder.And(begins, _builder.Constant(before.LastScan > 0)));
        return (output, _builder.IfThenElse(before.LastOutput, pulsing, resting));
    }

    private Expression Later(Before before) =>
        _builder.Minimum(_builder.Add(before.Scans, _builder.Constant(1)), _builder.Constant(before.LastScan));

    private Expression Elapsed(Expression scans, Before before) => _builder.LessOrEqual(_builder.Constant(before.LastScan), scans);

    /// <summary>The preset in milliseconds, where it is the same in every scan.</summary>
    private long? Preset(BlockInstance timer, Store store, SourceSpan span)
    {
        Slot preset = timer.Slot("PT");
        Expression? value = store.Get(preset);
        if (value == preset.Entry)
        {
            _context.InitialPresets.Add((timer, span));
            return preset.Initial;
        }

        return value is { IsConstant: true } ? value.Value : null;
    }

    private Expression Value(BlockInstance timer, string member, Store store) => store.Get(timer.Slot(member)) ?? _builder.False;

    private static void Write(BlockInstance timer, string member, Expression value, Store store)
    {
        Slot slot = timer.Slot(member);
        slot.IsAssigned = true;
        store.Set(slot, value);
    }

    private static ImmutableArray<VariableSectionSyntax> ReadSections()
    {
        const string Text =
            """
            FUNCTION_BLOCK Timer
            VAR_INPUT IN : BOOL; PT : TIME; END_VAR
            VAR_OUTPUT Q : BOOL; ET : TIME; END_VAR
            VAR scans : DINT (0..2147483647); last : BOOL; END_VAR
            END_FUNCTION_BLOCK
            """;
        SourceFileSyntax file = StructuredTextParser.Parse(new SourceText("IEC 61131-3 timers", Text), new DiagnosticBag());
        return ((UnitSyntax)file.Declarations[0]).Sections;
    }

    private sealed record Before(Expression Input, Expression LastInput, Expression LastOutput, Expression Scans, long LastScan);
}
