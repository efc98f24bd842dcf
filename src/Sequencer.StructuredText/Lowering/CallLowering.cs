using System.Collections.Immutable;
using Sequencer.Control.TransitionSystems;
using Sequencer.StructuredText.Syntax;
using Sequencer.Text;

namespace Sequencer.StructuredText.Lowering;

/// <summary>
/// Calls: arguments are taken in the caller, the body runs in the callee, outputs are taken back. An input
/// that is not given keeps its value from the call before.
/// </summary>
internal sealed class CallLowering
{
    private readonly LoweringContext _context;
    private readonly InstanceBuilder _instances;
    private readonly ExpressionLowering _expressions;
    private readonly Action<ImmutableArray<StatementSyntax>, ScanPoint> _run;
    private readonly TimerLowering _timers;

    public CallLowering(
        LoweringContext context, InstanceBuilder instances, ExpressionLowering expressions, Action<ImmutableArray<StatementSyntax>, ScanPoint> run)
    {
        _context = context;
        _instances = instances;
        _expressions = expressions;
        _run = run;
        _timers = new TimerLowering(context);
    }

    /// <summary>The place that an assignment writes; null where it has been reported that there is none.</summary>
    public Place? Target(PathSyntax path, ScanPoint point)
    {
        if (_expressions.Resolve(path, point) is not { } place)
        {
            return null;
        }

        if (place.Type is null)
        {
            _context.Diagnostics.Add(StructuredTextDiagnostics.WrongType(path.Span, "a variable to assign", NameResolution.Describe(place.Any)));
            return null;
        }

        foreach (Slot slot in place.Alternatives.SelectMany(one => one.Member.Leaves()))
        {
            slot.IsAssigned = true;
            if (NameResolution.WhyNotAssignable(slot, place, path, point.Frame) is { } why)
            {
                _context.Diagnostics.Add(StructuredTextDiagnostics.NotAssignable(path.Span, path.ToString(), why));
                return null;
            }
        }

        return place;
    }

    /// <summary>A call of an instance, or of a function whose value nobody takes.</summary>
    public void Call(CallStatementSyntax call, ScanPoint point)
    {
        if (call.Instance.Selectors.IsEmpty && NameResolution.Find(_context, call.Instance.Root.Text, point.Frame) is null
            && _context.Units.TryGetValue(call.Instance.Root.Text, out UnitSyntax? unit) && unit.Kind == UnitKind.Function)
        {
            Function(new FunctionCallSyntax(call.Instance.Root, call.Arguments, call.Span), unit, point);
            return;
        }

        if (_expressions.Resolve(call.Instance, point) is not { } place)
        {
            return;
        }

        if (place.Only is BlockInstance instance)
        {
            Block(call, instance, point);
        }
        else
        {
            _context.Diagnostics.Add(place.Any is BlockInstance
                ? StructuredTextDiagnostics.NotCompared(
                    call.Instance.Span, "a call of a block chosen by a variable", "each block has a memory and a clock of its own", "call each block by its number, in every scan")
                : StructuredTextDiagnostics.WrongType(call.Instance.Span, "a block instance", NameResolution.Describe(place.Any)));
        }
    }

    private void Block(CallStatementSyntax call, BlockInstance instance, ScanPoint point)
    {
        if (point.Depth >= LoweringContext.DeepestCall)
        {
            _context.Diagnostics.Add(StructuredTextDiagnostics.ContainsItself(call.Instance.Span, instance.Type));
            return;
        }

        if (instance.Unit is null && instance.IsCalled)
        {
            _context.Diagnostics.Add(StructuredTextDiagnostics.TimerCalledTwice(call.Instance.Span, instance.Path));
        }

        instance.FirstCall ??= call.Instance.Span;
        if (instance.Called is { } called)
        {
            point.Store.Set(called, _context.Builder.True);
        }

        if (!GiveArguments(call.Arguments, instance, point, call.Span))
        {
            return;
        }

        if (instance.Unit is null)
        {
            _timers.Call(instance, point, call.Instance.Span);
        }
        else
        {
            RunBody(instance, instance.Unit, point);
        }

        TakeOutputs(call.Arguments, instance, point);
    }

    public TypedExpression? Function(FunctionCallSyntax call, UnitSyntax unit, ScanPoint point)
    {
        if (point.Depth >= LoweringContext.DeepestCall)
        {
            _context.Diagnostics.Add(StructuredTextDiagnostics.ContainsItself(call.Function.Span, unit.Name.Text));
            return null;
        }

        if (!_context.Spend(call.Span))
        {
            return null;
        }

        BlockInstance function = _instances.Function(unit);
        foreach (Slot slot in function.Members.Values.SelectMany(member => member.Leaves()).Where(slot => slot.Section == VariableSectionKind.Input))
        {
            point.Store.Set(slot, _context.Builder.Number(slot.Type, slot.Initial));
        }

        if (!GiveArguments(call.Arguments, function, point, call.Span))
        {
            return null;
        }

        RunBody(function, unit, point);
        TakeOutputs(call.Arguments, function, point);
        if (function.Members.GetValueOrDefault(unit.Name.Text) is not Slot result)
        {
            return null;
        }

        if (point.Store.Get(result, point.Facts) is not { } value)
        {
            _context.Diagnostics.Add(StructuredTextDiagnostics.ReadBeforeWritten(unit.Name.Span, unit.Name.Text));
            return null;
        }

        return new TypedExpression(value, result.Type);
    }

    public void RunBody(BlockInstance instance, UnitSyntax unit, ScanPoint point)
    {
        _context.Reached.Add(unit);
        HashSet<string> initialised = new(
            unit.Sections.SelectMany(section => section.Variables).Where(variable => variable.Initial is not null).Select(variable => variable.Name.Text),
            StringComparer.OrdinalIgnoreCase);
        foreach ((string name, Member member) in instance.Members)
        {
            foreach (Slot slot in member.Leaves().Where(slot => slot is { Role: SlotRole.Temporary, Section: not VariableSectionKind.Input }))
            {
                bool hasValue = slot.Section == VariableSectionKind.Local || initialised.Contains(name);
                point.Store.Set(slot, hasValue ? _context.Builder.Number(slot.Type, slot.Initial) : null);
            }
        }

        Jumps jumps = Jumps.OfBody(_context.Builder, new Origin(unit.Name.Span));
        _run(unit.Body, point with { Frame = instance, Depth = point.Depth + 1, Jumps = jumps });
    }

    /// <summary>False where an in-out stands for nothing, so that the body has no meaning.</summary>
    private bool GiveArguments(ImmutableArray<ArgumentSyntax> arguments, BlockInstance callee, ScanPoint point, SourceSpan span)
    {
        string[] formal = [.. callee.Order.Where(name => callee.Members[name].Section is VariableSectionKind.Input or VariableSectionKind.InOut)];
        HashSet<string> named = new(StringComparer.OrdinalIgnoreCase);
        List<(Slot Slot, Expression? Value)> values = [];
        for (int index = 0; index < arguments.Length; index++)
        {
            ArgumentSyntax argument = arguments[index];
            if (argument.IsOutput)
            {
                continue;
            }

            string? name = argument.Name?.Text ?? (index < formal.Length ? formal[index] : null);
            if (name is null || !formal.Contains(name, StringComparer.OrdinalIgnoreCase) || !named.Add(name))
            {
                _context.Diagnostics.Add(StructuredTextDiagnostics.NoSuchMember(argument.Name?.Span ?? argument.Span, name ?? "more inputs", callee.Type));
            }
            else if (callee.Members[name] is InOutMember inOut)
            {
                Bind(inOut, name, argument, point);
            }
            else if (new Place([(_context.Builder.True, callee.Members[name])], false) is { Type: { } type, Any: var input })
            {
                ImmutableArray<Expression?>? given = _expressions.Values(argument.Value, type, point);
                foreach ((Slot slot, int part) in input.Leaves().Select((slot, part) => (slot, part)))
                {
                    slot.IsAssigned = true;
                    values.Add((slot, given?[part]));
                }
            }
        }

        values.ForEach(one => point.Store.Set(one.Slot, one.Value ?? _context.Builder.Anything(one.Slot.Type)));
        foreach (string name in formal.Where(name => callee.Members[name] is InOutMember && !named.Contains(name)))
        {
            _context.Diagnostics.Add(StructuredTextDiagnostics.InOutNotGiven(span, name));
            ((InOutMember)callee.Members[name]).Bound = null;
        }

        return callee.Members.Values.OfType<InOutMember>().All(inOut => inOut.Bound is not null);
    }

    private void Bind(InOutMember inOut, string name, ArgumentSyntax argument, ScanPoint point)
    {
        Member? target = argument.Value is PathSyntax path ? _expressions.Resolve(path, point)?.Only : null;
        bool fits = target switch
        {
            Slot slot => inOut.Type is { } type && slot.Type.IsSameAs(type),
            CompoundMember { Type: { } compound } => inOut.Type is { } type && compound.IsSameAs(type),
            BlockInstance instance => string.Equals(instance.Type, inOut.Block, StringComparison.OrdinalIgnoreCase),
            _ => false,
        };
        if (!fits)
        {
            _context.Diagnostics.Add(StructuredTextDiagnostics.InOutNotGiven(argument.Span, name));
        }

        inOut.Bound = fits ? target : null;
    }

    private void TakeOutputs(ImmutableArray<ArgumentSyntax> arguments, BlockInstance callee, ScanPoint point)
    {
        foreach (ArgumentSyntax argument in arguments.Where(argument => argument.IsOutput))
        {
            if (argument.Name is null || NameResolution.Connection(callee, argument.Name.Text) is not { Section: VariableSectionKind.Output } output)
            {
                _context.Diagnostics.Add(StructuredTextDiagnostics.NoSuchMember(argument.Span, argument.Name?.Text ?? "output", callee.Type));
            }
            else if (argument.Value is PathSyntax path && Target(path, point) is { } target)
            {
                Take(output, target, point, argument.Span);
            }
        }
    }

    private void Take(Member output, Place target, ScanPoint point, SourceSpan span)
    {
        Place source = new([(_context.Builder.True, output)], false);
        ImmutableArray<Expression?> values = source.Read(_context.Builder, point.Store, point.Facts);
        if (source.Type is not { } from || target.Type is not { } to || ((from.IsCompound || to.IsCompound) && !from.IsSameAs(to)))
        {
            _context.Diagnostics.Add(StructuredTextDiagnostics.WrongType(span, target.Type?.Name ?? "a variable", NameResolution.Describe(output)));
            return;
        }

        if (!to.IsCompound)
        {
            values = [values[0] is { } value ? _expressions.Convert(new TypedExpression(value, from), to, point.Facts, span) : null];
        }

        if (!values.Contains(null))
        {
            target.Write(_context.Builder, point.Store, [.. values.OfType<Expression>()]);
        }
    }
}
