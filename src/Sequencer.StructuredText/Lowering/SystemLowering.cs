using System.Collections.Immutable;
using Sequencer.Control.TransitionSystems;
using Sequencer.StructuredText.Syntax;
using Sequencer.Text;

namespace Sequencer.StructuredText.Lowering;

/// <summary>Declares everything, runs one scan over expressions, and makes the system of what came out.</summary>
internal sealed class SystemLowering
{
    private readonly SourceFileSyntax _file;
    private readonly EntryPoint _entry;
    private readonly LoweringContext _context;
    private readonly InstanceBuilder _instances;

    public SystemLowering(SourceFileSyntax file, EntryPoint entry, DiagnosticBag diagnostics, CancellationToken cancellation)
    {
        _file = file;
        _entry = entry;
        _context = new LoweringContext(diagnostics, entry.ScanMilliseconds, cancellation);
        _instances = new InstanceBuilder(_context);
    }

    public TransitionSystem? Lower()
    {
        Store store = Run();
        CheckUnreached();
        return _context.Diagnostics.HasErrors ? null : new SystemAssembly(_context, store).Assemble(_entry.Unit.Name.Text);
    }

    /// <summary>The addresses of what was read, by the names of the variables that have one.</summary>
    public ImmutableDictionary<string, string> Addresses => _context.Slots.Where(slot => slot.Address is not null)
        .DistinctBy(slot => slot.Name, StringComparer.OrdinalIgnoreCase)
        .ToImmutableDictionary(slot => slot.Name, slot => slot.Address ?? "", StringComparer.OrdinalIgnoreCase);

    private Store Run()
    {
        Declare();
        BlockInstance program = _instances.Program(_entry.Unit);
        Store store = Store.Empty();
        ScanPoint point = new(program, store, new RangeFacts(_context.Builder), false, 0);
        new StatementLowering(_context, _instances).RunProgram(program, _entry.Unit, point);
        _context.Slots.RemoveAll(slot => slot is { Section: VariableSectionKind.Global, IsNamed: false });
        Review(store);
        return store;
    }

    /// <summary>
    /// Blocks that nothing runs are run too, each by itself, for their mistakes; one with in-outs has no meaning
    /// by itself and is left.
    /// </summary>
    private void CheckUnreached()
    {
        IEnumerable<UnitSyntax> unreached = _file.Declarations.OfType<UnitSyntax>()
            .Where(unit => unit.Kind != UnitKind.Function && !_context.Reached.Contains(unit))
            .Where(unit => unit.Sections.All(section => section.Kind != VariableSectionKind.InOut));
        foreach (UnitSyntax unit in unreached)
        {
            new SystemLowering(_file, _entry with { Unit = unit }, _context.Diagnostics, _context.Cancellation).Run();
        }
    }

    private void Declare()
    {
        foreach (UnitSyntax unit in StandardBlocks.All)
        {
            _context.Units.Add(unit.Name.Text, unit);
        }

        foreach (UnitSyntax unit in _file.Declarations.OfType<UnitSyntax>())
        {
            if (!_context.Units.TryAdd(unit.Name.Text, unit))
            {
                _context.Diagnostics.Add(StructuredTextDiagnostics.DeclaredTwice(unit.Name.Span, unit.Name.Text, _context.Units[unit.Name.Text].Name.Span));
            }
        }

        IEnumerable<VariableSectionSyntax> globals = _file.Declarations.OfType<GlobalsSyntax>().Select(one => one.Section)
            .Concat(_file.Declarations.OfType<ConfigurationSyntax>().SelectMany(one => one.Globals));
        DeclareTypes();
        foreach (VariableSectionSyntax section in globals)
        {
            _instances.Globals(section);
        }
    }

    private void DeclareTypes()
    {
        Dictionary<string, SourceSpan> first = new(StringComparer.OrdinalIgnoreCase);
        foreach (TypeDeclarationSyntax type in _file.Declarations.OfType<TypeDeclarationSyntax>())
        {
            if (_context.Units.TryGetValue(type.Name.Text, out UnitSyntax? unit))
            {
                _context.Diagnostics.Add(StructuredTextDiagnostics.DeclaredTwice(type.Name.Span, type.Name.Text, unit.Name.Span));
            }
            else if (!first.TryAdd(type.Name.Text, type.Name.Span))
            {
                _context.Diagnostics.Add(StructuredTextDiagnostics.DeclaredTwice(type.Name.Span, type.Name.Text, first[type.Name.Text]));
            }
            else
            {
                _context.Types.Declare(type);
            }
        }
    }

    /// <summary>
    /// What can only be said when the whole scan has been run; where statements were left out for their mistakes,
    /// what they assign and call is not known.
    /// </summary>
    private void Review(Store store)
    {
        foreach ((BlockInstance timer, SourceSpan call) in _context.InitialPresets.Where(one => one.Timer.Slot("PT").IsAssigned))
        {
            _context.Diagnostics.Add(StructuredTextDiagnostics.PresetNotConstant(call, timer.Path));
        }

        if (!_context.Diagnostics.HasErrors)
        {
            ReviewUnused();
            ReviewCalls(store);
        }
    }

    /// <summary>Of blocks inside one another that are not called in every scan, the outermost is named.</summary>
    private void ReviewCalls(Store store)
    {
        foreach (BlockInstance instance in _context.Instances.Where(instance => !IsCalledAlways(instance) && IsCalledAlways(instance.Owner)))
        {
            if (instance.FirstCall is { } call)
            {
                _context.Diagnostics.Add(StructuredTextDiagnostics.BlockCalledConditionally(call, instance.Path));
            }
        }

        bool IsCalledAlways(BlockInstance? instance) => instance?.Called is not { } called || store.Get(called) is { IsTrue: true };
    }

    private void ReviewUnused()
    {
        BlockInstance[] idle = [.. _context.Instances.Where(instance => !instance.IsCalled)];
        HashSet<Slot> ofIdle = [.. idle.SelectMany(instance => instance.Members.Values).SelectMany(member => member.Leaves())];
        foreach (Slot slot in _context.Slots.Where(slot => !slot.IsAssigned && !ofIdle.Contains(slot)))
        {
            if (slot.Role == SlotRole.Output || slot.Section == VariableSectionKind.Output)
            {
                _context.Diagnostics.Add(StructuredTextDiagnostics.OutputNeverAssigned(slot.Origin.Span, slot.Name));
            }
        }

        foreach (BlockInstance instance in idle)
        {
            _context.Diagnostics.Add(StructuredTextDiagnostics.BlockNeverCalled(instance.Origin.Span, instance.Path));
        }
    }
}
