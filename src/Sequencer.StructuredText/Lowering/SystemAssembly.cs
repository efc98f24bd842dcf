using System.Collections.Immutable;
using Sequencer.Control.TransitionSystems;

namespace Sequencer.StructuredText.Lowering;

/// <summary>
/// The system of one scan's outcome. A slot whose value from the scan before is never looked at is no state but
/// a definition. A return of power gives every slot that is not retained its initial value before the scan.
/// </summary>
internal sealed class SystemAssembly
{
    /// <summary>True in the first scan after a loss of power.</summary>
    public const string PowerReturned = "power.returned";

    /// <summary>How often ranges of states are narrowed to what the scan before can have left.</summary>
    private const int MostNarrowings = 3;

    private readonly LoweringContext _context;
    private readonly ExpressionBuilder _builder;
    private readonly Store _store;

    public SystemAssembly(LoweringContext context, Store store)
    {
        _context = context;
        _builder = context.Builder;
        _store = store;
    }

    public TransitionSystem? Assemble(string name)
    {
        HashSet<Variable> read = [.. ExpressionGraph.Variables(_context.Slots.Select(Visible).OfType<Expression>())];
        List<Slot> inputs = [.. _context.Slots.Where(slot => slot.Role == SlotRole.Input || IsFreeMarker(slot))];
        HashSet<Slot> free = [.. inputs];
        List<Slot> carried = [.. _context.Slots.Where(slot => !free.Contains(slot) && slot.Entry?.Variable is { } entry && read.Contains(entry))];
        foreach (Slot slot in carried.Where(slot => _store.Get(slot) is null))
        {
            _context.Diagnostics.Add(StructuredTextDiagnostics.ReadBeforeWritten(slot.Origin.Span, slot.Name));
        }

        if (_context.Diagnostics.HasErrors)
        {
            return null;
        }

        List<Slot> outputs = [.. _context.Slots.Where(slot => slot.Role == SlotRole.Output)];
        HashSet<Slot> kept = [.. carried];
        List<Slot> defined = [.. _context.Slots.Where(slot => slot.Role is SlotRole.Kept or SlotRole.Marker && !free.Contains(slot) && !kept.Contains(slot) && Visible(slot) is not null)];
        ImmutableArray<IntegerRange> ranges = [.. carried.Select(slot => slot.Type.Range)];
        for (int turn = 0; ; turn++)
        {
            Scan scan = Rebuild(inputs, carried, ranges, outputs, defined);
            ImmutableArray<IntegerRange> narrowed = [.. carried.Select((slot, index) => Narrowed(slot, scan.Next[index]))];
            if (turn == MostNarrowings || narrowed.SequenceEqual(ranges))
            {
                return System(name, carried, outputs, defined, scan);
            }

            ranges = narrowed;
        }
    }

    /// <summary>What others see of the slot's value behind the scan; one that only keeps it shows nothing.</summary>
    private Expression? Visible(Slot slot) =>
        _store.Get(slot) is { } value && (slot.Role == SlotRole.Output || value != slot.Entry) ? value : null;

    private static bool IsFreeMarker(Slot slot) => slot.Role == SlotRole.Marker && !slot.IsAssigned;

    /// <summary>Whatever the state before, the state behind a scan lies here, and so does the first.</summary>
    private static IntegerRange Narrowed(Slot slot, Expression next) =>
        slot.Type.Sort == Sort.Boolean ? IntegerRange.Boolean : next.Range.Union(new IntegerRange(slot.Initial, slot.Initial));

    private Scan Rebuild(List<Slot> inputs, List<Slot> carried, ImmutableArray<IntegerRange> ranges, List<Slot> outputs, List<Slot> defined)
    {
        Variable power = new(PowerReturned, VariableRole.Input, 0, Sort.Boolean, IntegerRange.Boolean);
        ImmutableArray<Variable> free = [power, .. inputs.Select((slot, index) => new Variable(slot.Name, VariableRole.Input, index + 1, slot.Type.Sort, slot.Type.Range))];
        ImmutableArray<Variable> kept = [.. carried.Select((slot, index) => new Variable(NameOf(slot), VariableRole.State, index, slot.Type.Sort, ranges[index]))];
        Dictionary<Variable, Expression> images = [];
        foreach ((Slot slot, Variable variable) in inputs.Zip(free.Skip(1)))
        {
            images.Add(Provisional(slot), _builder.Variable(variable));
        }

        Expression returned = _builder.Variable(power);
        foreach ((Slot slot, Variable variable) in carried.Zip(kept))
        {
            Expression value = _builder.Variable(variable);
            images.Add(Provisional(slot), slot.Retained ? value : _builder.IfThenElse(returned, _builder.Number(slot.Type, slot.Initial), value));
        }

        IReadOnlyList<Expression> rebuilt = _builder.Substitute([.. carried.Concat(outputs).Concat(defined).Select(Final)], images);
        return new Scan(
            free,
            kept,
            [.. rebuilt.Take(carried.Count)],
            [.. rebuilt.Skip(carried.Count).Take(outputs.Count)],
            [.. rebuilt.Skip(carried.Count + outputs.Count)]);
    }

    private TransitionSystem System(string name, List<Slot> carried, List<Slot> outputs, List<Slot> defined, Scan scan) =>
        TransitionSystem.Create(
            name,
            _context.ScanMilliseconds,
            scan.Inputs,
            [.. carried.Select((slot, index) => new StateVariable(scan.States[index], slot.Initial, scan.Next[index], slot.Retained, StatePurpose.Control, slot.Origin))],
            [.. outputs.Select((slot, index) => new OutputVariable(slot.Name, scan.Outputs[index], slot.Origin))],
            [.. defined.Select((slot, index) => new Definition(slot.Name, scan.Definitions[index], slot.Origin))],
            [],
            [],
            []);

    /// <summary>An output whose last value is looked at has two names: one for this scan, one for the last.</summary>
    private static string NameOf(Slot slot) => slot.Role == SlotRole.Output ? $"{slot.Name}.last" : slot.Name;

    private Expression Final(Slot slot) =>
        _store.Get(slot) ?? throw new InvalidOperationException($"{slot.Name} has no value behind the scan");

    private static Variable Provisional(Slot slot) =>
        slot.Entry?.Variable ?? throw new InvalidOperationException($"{slot.Name} has no value before the scan");

    private sealed record Scan(
        ImmutableArray<Variable> Inputs,
        ImmutableArray<Variable> States,
        ImmutableArray<Expression> Next,
        ImmutableArray<Expression> Outputs,
        ImmutableArray<Expression> Definitions);
}
