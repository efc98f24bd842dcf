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

    /// <summary>The slot that an assignment writes; null where it has been reported that there is none.</summary>
    public Slot? Target(PathSyntax path, BlockInstance frame)
    {
        Member? member = NameResolution.Resolve(_context, path, frame);
        if (member is not Slot slot)
        {
            if (member is not null)
            {
                _context.Diagnostics.Add(StructuredTextDiagnostics.WrongType(path.Span, "a variable to assign", NameResolution.Describe(member)));
            }

            return null;
        }

        slot.IsAssigned = true;
        if (NameResolution.WhyNotAssignable(slot, path, frame) is { } why)
        {
            _context.Diagnostics.Add(StructuredTextDiagnostics.NotAssignable(path.Span, path.ToString(), why));
            return null;
        }

        return slot;
    }

    public void Block(CallStatementSyntax call, ScanPoint point)
    {
        Member? member = NameResolution.Resolve(_context, call.Instance, point.Frame);
        if (member is not BlockInstance instance)
        {
            if (member is not null)
            {
                _context.Diagnostics.Add(StructuredTextDiagnostics.WrongType(call.Instance.Span, "a block instance", NameResolution.Describe(member)));
            }

            return;
        }

        if (point.Depth >= LoweringContext.DeepestCall)
        {
            _context.Diagnostics.Add(StructuredTextDiagnostics.ContainsItself(call.Instance.Span, instance.Type));
            return;
        }

        if (instance.Unit is null && instance.IsCalled)
        {
            _context.Diagnostics.Add(StructuredTextDiagnostics.TimerCalledTwice(call.Instance.Span, instance.Path));
        }

        instance.IsCalled = true;
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
        foreach (Slot slot in function.Members.Values.OfType<Slot>().Where(slot => slot.Section == VariableSectionKind.Input))
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

        if (point.Store.Get(result) is not { } value)
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
            if (member is Slot { Role: SlotRole.Temporary, Section: not VariableSectionKind.Input } slot)
            {
                bool hasValue = slot.Section == VariableSectionKind.Local || initialised.Contains(name);
                point.Store.Set(slot, hasValue ? _context.Builder.Number(slot.Type, slot.Initial) : null);
            }
        }

        _run(unit.Body, point with { Frame = instance, Depth = point.Depth + 1 });
    }

    /// <summary>False where an in-out stands for nothing, so that the body has no meaning.</summary>
    private bool GiveArguments(ImmutableArray<ArgumentSyntax> arguments, BlockInstance callee, ScanPoint point, SourceSpan span)
    {
        string[] formal = [.. callee.Order.Where(name => callee.Members[name].Section is VariableSectionKind.Input or VariableSectionKind.InOut)];
        HashSet<string> given = new(StringComparer.OrdinalIgnoreCase);
        List<(Slot Slot, Expression? Value)> values = [];
        for (int index = 0; index < arguments.Length; index++)
        {
            ArgumentSyntax argument = arguments[index];
            if (argument.IsOutput)
            {
                continue;
            }

            string? name = argument.Name?.Text ?? (index < formal.Length ? formal[index] : null);
            if (name is null || !formal.Contains(name, StringComparer.OrdinalIgnoreCase) || !given.Add(name))
            {
                _context.Diagnostics.Add(StructuredTextDiagnostics.NoSuchMember(argument.Name?.Span ?? argument.Span, name ?? "more inputs", callee.Type));
            }
            else if (callee.Members[name] is InOutMember inOut)
            {
                Bind(inOut, name, argument, point);
            }
            else if (callee.Members[name] is Slot input)
            {
                input.IsAssigned = true;
                values.Add((input, _expressions.LowerAs(argument.Value, input.Type, point)?.Value));
            }
        }

        values.ForEach(one => point.Store.Set(one.Slot, one.Value ?? _context.Builder.Anything(one.Slot.Type)));
        foreach (string name in formal.Where(name => callee.Members[name] is InOutMember && !given.Contains(name)))
        {
            _context.Diagnostics.Add(StructuredTextDiagnostics.InOutNotGiven(span, name));
            ((InOutMember)callee.Members[name]).Bound = null;
        }

        return callee.Members.Values.OfType<InOutMember>().All(inOut => inOut.Bound is not null);
    }

    private void Bind(InOutMember inOut, string name, ArgumentSyntax argument, ScanPoint point)
    {
        Member? target = argument.Value is PathSyntax path ? NameResolution.Resolve(_context, path, point.Frame) : null;
        bool fits = target switch
        {
            Slot slot => slot.Type == inOut.Type || (slot.Type.Name == inOut.Type?.Name && slot.Type.Range == inOut.Type.Range),
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
            if (argument.Name is null || NameResolution.Connection(callee, argument.Name.Text) is not Slot { Section: VariableSectionKind.Output } output)
            {
                _context.Diagnostics.Add(StructuredTextDiagnostics.NoSuchMember(argument.Span, argument.Name?.Text ?? "output", callee.Type));
            }
            else if (argument.Value is PathSyntax path && Target(path, point.Frame) is { } target && point.Store.Get(output) is { } value
                && _expressions.Convert(new TypedExpression(value, output.Type), target.Type, point.Facts, argument.Span) is { } converted)
            {
                point.Store.Set(target, converted);
            }
        }
    }
}
