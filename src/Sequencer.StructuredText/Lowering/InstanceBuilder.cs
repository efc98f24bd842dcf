using Sequencer.Control.TransitionSystems;
using Sequencer.StructuredText.Syntax;
using Sequencer.StructuredText.Types;
using Sequencer.Text;

namespace Sequencer.StructuredText.Lowering;

/// <summary>Gives every variable of a program, and of the blocks inside it, a slot of its own.</summary>
internal sealed class InstanceBuilder
{
    private readonly LoweringContext _context;
    private readonly ExpressionLowering _expressions;
    private readonly Dictionary<string, SourceSpan> _addresses = new(StringComparer.OrdinalIgnoreCase);
    private int _variables;

    public InstanceBuilder(LoweringContext context)
    {
        _context = context;
        _expressions = new ExpressionLowering(context);
    }

    /// <summary>The program or block that is read: its inputs and outputs are the system's.</summary>
    public BlockInstance Program(UnitSyntax unit)
    {
        BlockInstance program = new("", unit.Name.Text, unit, VariableSectionKind.Local, new Origin(unit.Name.Span));
        foreach (VariableSectionSyntax section in unit.Sections)
        {
            Declare(section, program, new Surroundings(IsTop: true, IsRetained: false, IsFunction: false, Depth: 0));
        }

        return program;
    }

    /// <summary>A call of a function: everything in it lasts as long as the call.</summary>
    public BlockInstance Function(UnitSyntax unit)
    {
        BlockInstance function = new(unit.Name.Text, unit.Name.Text, unit, VariableSectionKind.Local, new Origin(unit.Name.Span));
        foreach (VariableSectionSyntax section in unit.Sections)
        {
            Declare(section, function, new Surroundings(IsTop: false, IsRetained: false, IsFunction: true, Depth: 0));
        }

        if (unit.ReturnType is not null && _context.Types.Resolve(unit.ReturnType) is { } type && !function.Members.ContainsKey(unit.Name.Text))
        {
            function.Add(unit.Name.Text, new Slot(unit.Name.Text, type, SlotRole.Temporary, VariableSectionKind.Output, function.Origin));
        }

        return function;
    }

    public void Globals(VariableSectionSyntax section)
    {
        BlockInstance globals = new("", "VAR_GLOBAL", null, VariableSectionKind.Global, new Origin(section.Span));
        foreach ((string name, Member member) in _context.Globals)
        {
            globals.Members.Add(name, member);
        }

        Declare(section, globals, new Surroundings(IsTop: false, IsRetained: false, IsFunction: false, Depth: 0));
        foreach (string name in globals.Order)
        {
            _context.Globals.Add(name, globals.Members[name]);
        }
    }

    private void Declare(VariableSectionSyntax section, BlockInstance owner, Surroundings around)
    {
        foreach (VariableSyntax variable in section.Variables)
        {
            if (owner.Members.TryGetValue(variable.Name.Text, out Member? first)
                || (section.Kind != VariableSectionKind.External && around.IsTop && _context.Globals.TryGetValue(variable.Name.Text, out first)))
            {
                _context.Diagnostics.Add(StructuredTextDiagnostics.DeclaredTwice(variable.Name.Span, variable.Name.Text, first.Origin.Span));
            }
            else if (Member(section, variable, owner, around) is { } member)
            {
                owner.Add(variable.Name.Text, member);
            }
        }
    }

    private Member? Member(VariableSectionSyntax section, VariableSyntax variable, BlockInstance owner, Surroundings around)
    {
        Origin origin = new(variable.Name.Span, owner.Path.Length == 0 ? null : owner.Path);
        if (section.Kind == VariableSectionKind.External)
        {
            return External(variable);
        }

        string? block = variable.Type is NamedTypeSyntax named && IsBlock(named.Name.Text) ? named.Name.Text : null;
        DataType? type = block is null ? _context.Types.Resolve(variable.Type) : null;
        if (section.Kind == VariableSectionKind.InOut)
        {
            if (around.IsTop)
            {
                _context.Diagnostics.Add(StructuredTextDiagnostics.InOutNotGiven(variable.Name.Span, variable.Name.Text));
            }

            return new InOutMember(type, block, origin);
        }

        bool retained = section.Retention == Retention.Retain || (around.IsRetained && section.Retention != Retention.NonRetain);
        if (block is not null)
        {
            return around.IsFunction
                ? Refuse(StructuredTextDiagnostics.NotSupportedYet(variable.Name.Span, "a block inside a function"))
                : Block(block, variable, section.Kind, owner, around with { IsTop = false, IsRetained = retained, Depth = around.Depth + 1 });
        }

        return type is null ? null : Elementary(section, variable, type, owner, around, retained, origin);
    }

    private bool IsBlock(string name) =>
        TimerLowering.IsTimer(name) || (_context.Units.TryGetValue(name, out UnitSyntax? unit) && unit.Kind == UnitKind.FunctionBlock);

    private Member? External(VariableSyntax variable)
    {
        return NameResolution.Global(_context, variable.Name.Text)
            ?? Refuse(StructuredTextDiagnostics.UndeclaredName(variable.Name.Span, variable.Name.Text));
    }

    private BlockInstance? Block(string type, VariableSyntax variable, VariableSectionKind section, BlockInstance owner, Surroundings around)
    {
        string path = owner.FullName(variable.Name.Text);
        Origin origin = new(variable.Name.Span, owner.Path.Length == 0 ? null : owner.Path);
        UnitSyntax? unit = _context.Units.GetValueOrDefault(type);
        BlockInstance instance = new(path, type, TimerLowering.IsTimer(type) ? null : unit, section, origin);
        if (around.Depth > LoweringContext.DeepestCall)
        {
            _context.Diagnostics.Add(StructuredTextDiagnostics.ContainsItself(variable.Name.Span, type));
            return null;
        }

        foreach (VariableSectionSyntax inner in instance.Unit?.Sections ?? TimerLowering.Sections)
        {
            VariableSectionSyntax initialised = inner with { Variables = [.. inner.Variables.Select(one => WithInitial(one, variable))] };
            Declare(initialised, instance, around);
        }

        _context.Instances.Add(instance);
        return instance;
    }

    /// <summary>The member with the initial value that the instance's declaration gives it.</summary>
    private static VariableSyntax WithInitial(VariableSyntax member, VariableSyntax instance) =>
        instance.InitialMembers.FirstOrDefault(one => string.Equals(one.Name?.Text, member.Name.Text, StringComparison.OrdinalIgnoreCase)) is { } given
            ? member with { Initial = given.Value }
            : member;

    private Slot Elementary(
        VariableSectionSyntax section, VariableSyntax variable, DataType type, BlockInstance owner, Surroundings around, bool retained, Origin origin)
    {
        SlotRole role = RoleOf(section, variable, around);
        string name = owner.FullName(variable.Name.Text);
        long initial = variable.Initial is null ? type.Default : _expressions.Constant(variable.Initial, owner, type)?.Value.Value ?? type.Default;
        Slot slot = new(name, type, role, section.Kind, origin)
        {
            Initial = initial,
            Retained = retained,
            Entry = Entry(name, type, role, initial),
        };
        if (!around.IsFunction && role is not (SlotRole.Temporary or SlotRole.Constant))
        {
            _context.Slots.Add(slot);
        }

        return slot;
    }

    private Expression? Entry(string name, DataType type, SlotRole role, long initial) => role switch
    {
        SlotRole.Temporary => null,
        SlotRole.Constant => type.Sort == Sort.Boolean ? _context.Builder.Constant(initial == 1) : _context.Builder.Constant(initial),
        SlotRole.Input => _context.Builder.Variable(new Variable(name, VariableRole.Input, _variables++, type.Sort, type.Range)),
        _ => _context.Builder.Variable(new Variable(name, VariableRole.State, _variables++, type.Sort, type.Range)),
    };

    private SlotRole RoleOf(VariableSectionSyntax section, VariableSyntax variable, Surroundings around)
    {
        if (variable.Address is { } address)
        {
            return RoleOf(address);
        }

        return section.IsConstant ? SlotRole.Constant
            : around.IsFunction || section.Kind == VariableSectionKind.Temporary ? SlotRole.Temporary
            : around.IsTop && section.Kind == VariableSectionKind.Input ? SlotRole.Input
            : around.IsTop && section.Kind == VariableSectionKind.Output ? SlotRole.Output
            : SlotRole.Kept;
    }

    private SlotRole RoleOf(AddressSyntax syntax)
    {
        if (DirectAddress.Parse(syntax.Text) is not { } address)
        {
            _context.Diagnostics.Add(StructuredTextDiagnostics.MalformedAddress(syntax.Span));
            return SlotRole.Kept;
        }

        if (!_addresses.TryAdd(address.Canonical, syntax.Span))
        {
            _context.Diagnostics.Add(StructuredTextDiagnostics.AddressTakenTwice(syntax.Span, syntax.Text, _addresses[address.Canonical]));
        }

        return address.Role;
    }

    private Member? Refuse(Diagnostic diagnostic)
    {
        _context.Diagnostics.Add(diagnostic);
        return null;
    }

    /// <summary>What the place of a declaration says about its variables.</summary>
    private readonly record struct Surroundings(bool IsTop, bool IsRetained, bool IsFunction, int Depth);
}
