using System.Collections.Immutable;
using Sequencer.Control.TransitionSystems;
using Sequencer.StructuredText.Syntax;
using Sequencer.StructuredText.Types;
using Sequencer.Text;

namespace Sequencer.StructuredText.Lowering;

/// <summary>Gives every variable of a program, and of the blocks inside it, a slot of its own.</summary>
internal sealed class InstanceBuilder
{
    private readonly LoweringContext _context;
    private readonly AddressMap _addresses = new();
    private int _variables;

    public InstanceBuilder(LoweringContext context)
    {
        _context = context;
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

        if (unit.ReturnType is null || _context.Types.Resolve(unit.ReturnType) is not { } type)
        {
            return function;
        }

        if (type.IsCompound)
        {
            _context.Diagnostics.Add(StructuredTextDiagnostics.NotSupportedYet(unit.ReturnType.Span, "a function whose value is an array or a structure"));
        }
        else if (!function.Members.ContainsKey(unit.Name.Text))
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

        string? block = BlockOf(variable.Type);
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
            Surroundings inside = around with { IsTop = false, IsRetained = retained, Depth = around.Depth + 1 };
            return around.IsFunction
                ? Refuse(StructuredTextDiagnostics.NotSupportedYet(variable.Name.Span, "a block inside a function"))
                : variable.Type is ArrayTypeSyntax array ? Blocks(array, block, variable, section.Kind, owner, inside)
                : Block(block, owner.FullName(variable.Name.Text), variable, section.Kind, owner, inside);
        }

        return type is null ? null : Values(section, variable, type, owner, around, retained, origin);
    }

    /// <summary>The block that a variable, or each element of an array, is an instance of; else null.</summary>
    private string? BlockOf(TypeSyntax type) => type switch
    {
        NamedTypeSyntax named when IsBlock(named.Name.Text) => named.Name.Text,
        ArrayTypeSyntax { Element: NamedTypeSyntax element } when IsBlock(element.Name.Text) => element.Name.Text,
        _ => null,
    };

    private bool IsBlock(string name) =>
        TimerLowering.IsTimer(name) || (_context.Units.TryGetValue(name, out UnitSyntax? unit) && unit.Kind == UnitKind.FunctionBlock);

    private Member? External(VariableSyntax variable)
    {
        return NameResolution.Global(_context, variable.Name.Text)
            ?? Refuse(StructuredTextDiagnostics.UndeclaredName(variable.Name.Span, variable.Name.Text));
    }

    private CompoundMember? Blocks(
        ArrayTypeSyntax array, string type, VariableSyntax variable, VariableSectionKind section, BlockInstance owner, Surroundings around)
    {
        if (_context.Types.Dimensions(array) is not { } dimensions)
        {
            return null;
        }

        ImmutableArray<Member>.Builder parts = ImmutableArray.CreateBuilder<Member>();
        string name = owner.FullName(variable.Name.Text);
        foreach (string index in Indices(dimensions))
        {
            if (!_context.Spend(variable.Name.Span) || Block(type, name + index, variable, section, owner, around) is not { } block)
            {
                return null;
            }

            parts.Add(block);
        }

        return new CompoundMember(name, null, dimensions, parts.ToImmutable(), section, new Origin(variable.Name.Span));
    }

    private BlockInstance? Block(string type, string path, VariableSyntax variable, VariableSectionKind section, BlockInstance owner, Surroundings around)
    {
        Origin origin = new(variable.Name.Span, owner.Path.Length == 0 ? null : owner.Path);
        UnitSyntax? unit = _context.Units.GetValueOrDefault(type);
        BlockInstance instance = new(path, type, TimerLowering.IsTimer(type) ? null : unit, section, origin)
        {
            Owner = owner,
            Called = new Slot($"{path}.called", ElementaryTypes.Boolean, SlotRole.Temporary, VariableSectionKind.Local, origin) { Entry = _context.Builder.False },
        };
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
        instance.Initial is StructureValueSyntax values
        && values.Members.FirstOrDefault(one => string.Equals(one.Name?.Text, member.Name.Text, StringComparison.OrdinalIgnoreCase)) is { } given
            ? member with { Initial = given.Value }
            : member;

    private Member? Values(
        VariableSectionSyntax section, VariableSyntax variable, DataType type, BlockInstance owner, Surroundings around, bool retained, Origin origin)
    {
        SlotRole role = RoleOf(section, variable, type, around);
        ImmutableArray<long> initial = variable.Initial is null ? type.Defaults : FirstValues.Of(_context, variable.Initial, type, owner);
        int next = 0;
        return Part(owner.FullName(variable.Name.Text), type);

        Member? Part(string name, DataType part)
        {
            if (!part.IsCompound)
            {
                return Elementary(section.Kind, name, part, role, initial[next++], around.IsFunction, retained, origin, type.IsCompound ? null : variable.Address);
            }

            IEnumerable<(string Name, DataType Type)> parts = part.Family == TypeFamily.Structure
                ? part.Fields.Select(field => ($"{name}.{field.Name}", field.Type))
                : Indices(part.Dimensions).Select(index => (name + index, part.Element!));
            ImmutableArray<Member>.Builder made = ImmutableArray.CreateBuilder<Member>();
            foreach ((string inner, DataType innerType) in parts)
            {
                if (!_context.Spend(variable.Name.Span) || Part(inner, innerType) is not { } member)
                {
                    return null;
                }

                made.Add(member);
            }

            return new CompoundMember(name, part, part.Dimensions, made.ToImmutable(), section.Kind, origin);
        }
    }

    /// <summary><c>[1]</c>, <c>[1,2]</c>, the last index counting fastest.</summary>
    private static IEnumerable<string> Indices(ImmutableArray<IntegerRange> dimensions)
    {
        IEnumerable<string> all = [""];
        foreach (IntegerRange dimension in dimensions)
        {
            int count = (int)(dimension.Maximum - dimension.Minimum + 1);
            all = all.SelectMany(before => Enumerable.Range(0, count).Select(step =>
                FormattableString.Invariant($"{before}{(before.Length == 0 ? "" : ",")}{dimension.Minimum + step}")));
        }

        return all.Select(index => $"[{index}]");
    }

    private Slot Elementary(
        VariableSectionKind section, string name, DataType type, SlotRole role, long initial, bool isFunction, bool retained, Origin origin, AddressSyntax? address)
    {
        bool isFollowed = IsFollowed(name, type, role, origin.Span);
        Slot slot = new(name, type, role, section, origin)
        {
            Initial = initial,
            Retained = retained,
            Address = address is null ? null : DirectAddress.Parse(address.Text)?.Canonical,
            Entry = isFollowed || role == SlotRole.Temporary ? Entry(name, type, role, initial) : _context.Builder.Constant(0),
        };
        if (isFollowed && !isFunction && role is not (SlotRole.Temporary or SlotRole.Constant))
        {
            _context.Slots.Add(slot);
        }

        return slot;
    }

    /// <summary>Whether the values of the variable are; that they are not is reported where others would see it.</summary>
    private bool IsFollowed(string name, DataType type, SlotRole role, SourceSpan span)
    {
        if (type.Family == TypeFamily.Opaque)
        {
            if (role == SlotRole.Output)
            {
                _context.Diagnostics.Add(StructuredTextDiagnostics.NotCompared(
                    span, $"output `{name}` of type {type}", "its values are not followed", "give it as a whole number of a small unit"));
            }

            return false;
        }

        if (type.Family == TypeFamily.Integer && (type.Range.Minimum < -ElementaryTypes.WidestBound || type.Range.Maximum > ElementaryTypes.WidestBound))
        {
            _context.Diagnostics.Add(StructuredTextDiagnostics.NotCompared(
                span, $"variable `{name}` of type {type}", "sums of such numbers do not fit 64 bits", $"declare its range, as `{type.Base} (0..1000000)`"));
            return false;
        }

        return true;
    }

    private Expression? Entry(string name, DataType type, SlotRole role, long initial) => role switch
    {
        SlotRole.Temporary => null,
        SlotRole.Constant => type.Sort == Sort.Boolean ? _context.Builder.Constant(initial == 1) : _context.Builder.Constant(initial),
        SlotRole.Input => _context.Builder.Variable(new Variable(name, VariableRole.Input, _variables++, type.Sort, type.Range)),
        _ => _context.Builder.Variable(new Variable(name, VariableRole.State, _variables++, type.Sort, type.Range)),
    };

    private SlotRole RoleOf(VariableSectionSyntax section, VariableSyntax variable, DataType type, Surroundings around)
    {
        if (variable.Address is { } address)
        {
            return RoleOf(address, type.Defaults.Length);
        }

        return section.IsConstant ? SlotRole.Constant
            : around.IsFunction || section.Kind == VariableSectionKind.Temporary ? SlotRole.Temporary
            : around.IsTop && section.Kind == VariableSectionKind.Input ? SlotRole.Input
            : around.IsTop && section.Kind == VariableSectionKind.Output ? SlotRole.Output
            : SlotRole.Kept;
    }

    private SlotRole RoleOf(AddressSyntax syntax, int elements)
    {
        if (DirectAddress.Parse(syntax.Text) is not { } address)
        {
            _context.Diagnostics.Add(StructuredTextDiagnostics.MalformedAddress(syntax.Span));
            return SlotRole.Kept;
        }

        if (_addresses.Take(address, elements, syntax) is var (first, isSame))
        {
            _context.Diagnostics.Add(isSame
                ? StructuredTextDiagnostics.AddressTakenTwice(syntax.Span, syntax.Text, first.Span)
                : StructuredTextDiagnostics.AddressesOverlap(syntax.Span, syntax.Text, first.Text, first.Span));
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
