using System.Collections.Immutable;
using Sequencer.Control.TransitionSystems;
using Sequencer.StructuredText.Syntax;
using Sequencer.StructuredText.Types;

namespace Sequencer.StructuredText.Lowering;

/// <summary>Finds what a path stands for: a name, with members and elements picked out of it.</summary>
internal sealed class NameResolution
{
    /// <summary>The most elements that one index may choose from.</summary>
    private const int MostAlternatives = 1000;

    private readonly LoweringContext _context;
    private readonly ExpressionBuilder _builder;
    private readonly ExpressionLowering _expressions;

    public NameResolution(LoweringContext context, ExpressionLowering expressions)
    {
        _context = context;
        _builder = context.Builder;
        _expressions = expressions;
    }

    /// <summary>The place, in-outs followed to what they stand for; null where it has been reported.</summary>
    public Place? Resolve(PathSyntax path, ScanPoint point)
    {
        if (Follow(Find(_context, path.Root.Text, point.Frame)) is not { } root)
        {
            _context.Diagnostics.Add(StructuredTextDiagnostics.UndeclaredName(path.Root.Span, path.Root.Text));
            return null;
        }

        Place place = new([(_builder.True, root)], false);
        string before = path.Root.Text;
        foreach (SelectorSyntax selector in path.Selectors)
        {
            Place? next = selector is IndexSelectorSyntax index ? Element(place, index, before, point) : Member(place, (MemberSelectorSyntax)selector, before);
            if (next is null)
            {
                return null;
            }

            place = next;
            before += selector;
        }

        return place;
    }

    public static Member? Find(LoweringContext context, string name, BlockInstance frame) =>
        frame.Members.TryGetValue(name, out Member? own) ? own : Global(context, name);

    /// <summary>The global of that name, which is part of what is read from here on.</summary>
    public static Member? Global(LoweringContext context, string name)
    {
        Member? global = context.Globals.GetValueOrDefault(name);
        foreach (Slot slot in global?.Leaves() ?? [])
        {
            slot.IsNamed = true;
        }

        return global;
    }

    /// <summary>An input, output or in-out of the instance.</summary>
    public static Member? Connection(BlockInstance instance, string name) =>
        instance.Members.TryGetValue(name, out Member? member)
        && member.Section is VariableSectionKind.Input or VariableSectionKind.Output or VariableSectionKind.InOut
            ? Follow(member)
            : null;

    /// <summary>Why what the path stands for cannot be assigned from the frame, or null where it can.</summary>
    public static string? WhyNotAssignable(Slot slot, Place place, PathSyntax path, BlockInstance frame) =>
        slot.Role == SlotRole.Constant ? "it is a constant"
        : slot.Role == SlotRole.Input ? "it is an input"
        : slot.IsCounting ? "it counts the turns of the loop around this"
        : place.IsInsideBlock ? slot.Section == VariableSectionKind.Output ? "it is an output of another block" : null
        : slot.Section == VariableSectionKind.Input && frame.Members.GetValueOrDefault(path.Root.Text) is not (null or InOutMember) ? "it is an input of this block"
        : null;

    /// <summary>What messages call the member.</summary>
    public static string Describe(Member member) => member switch
    {
        Slot slot => slot.Type.Name,
        CompoundMember { Type: { } type } => type.Name,
        CompoundMember => "an array of blocks",
        BlockInstance instance => $"block {instance.Type}",
        _ => "an in-out that nothing was given to",
    };

    private static Member? Follow(Member? member)
    {
        while (member is InOutMember { Bound: { } bound })
        {
            member = bound;
        }

        return member;
    }

    private Place? Member(Place place, MemberSelectorSyntax selector, string before)
    {
        ImmutableArray<(Expression, Member)>.Builder found = ImmutableArray.CreateBuilder<(Expression, Member)>();
        foreach ((Expression condition, Member whole) in place.Alternatives)
        {
            Member? part = whole switch
            {
                BlockInstance instance => Connection(instance, selector.Name.Text),
                CompoundMember compound => compound.Field(selector.Name.Text),
                _ => null,
            };
            if (part is null)
            {
                _context.Diagnostics.Add(StructuredTextDiagnostics.NoSuchMember(selector.Span, selector.Name.Text, before));
                return null;
            }

            found.Add((condition, part));
        }

        return new Place(found.ToImmutable(), place.IsInsideBlock || place.Any is BlockInstance);
    }

    private Place? Element(Place place, IndexSelectorSyntax selector, string before, ScanPoint point)
    {
        if (place.Any is not CompoundMember { Dimensions: { IsEmpty: false } dimensions } || dimensions.Length != selector.Indices.Length)
        {
            string wanted = place.Any is CompoundMember { Dimensions: { IsEmpty: false } known } ? $"{known.Length} index(es)" : "an array before `[`";
            string found = place.Any is CompoundMember { Dimensions.IsEmpty: false } ? $"{selector.Indices.Length}" : Describe(place.Any);
            _context.Diagnostics.Add(StructuredTextDiagnostics.WrongType(selector.Span, wanted, found));
            return null;
        }

        List<(Expression Condition, long Offset)> chosen = [(_builder.True, 0)];
        for (int dimension = 0; dimension < dimensions.Length; dimension++)
        {
            if (Choices(selector.Indices[dimension], dimensions[dimension], before, point) is not { } choices
                || (long)choices.Count * chosen.Count * place.Alternatives.Length > MostAlternatives)
            {
                return null;
            }

            long length = dimensions[dimension].Maximum - dimensions[dimension].Minimum + 1;
            chosen = [.. chosen.SelectMany(one => choices.Select(next => (_builder.And(one.Condition, next.Condition), (one.Offset * length) + next.Offset)))];
        }

        return new Place(
            [.. place.Alternatives.SelectMany(whole => chosen.Select(one => (_builder.And(whole.Condition, one.Condition), ((CompoundMember)whole.Member).Parts[(int)one.Offset])))],
            place.IsInsideBlock);
    }

    /// <summary>The elements that an index can choose, counted from the first, each with its condition.</summary>
    private List<(Expression Condition, long Offset)>? Choices(ExpressionSyntax syntax, IntegerRange bounds, string array, ScanPoint point)
    {
        if (_expressions.Lower(syntax, point) is not { } index)
        {
            return null;
        }

        if (index.Type.Family != TypeFamily.Integer)
        {
            _context.Diagnostics.Add(StructuredTextDiagnostics.WrongType(syntax.Span, "an integer as an index", index.Type.Name));
            return null;
        }

        IntegerRange range = point.Facts.RangeOf(index.Value);
        if (!bounds.Contains(range) && !point.Facts.IsImpossible)
        {
            _context.Diagnostics.Add(StructuredTextDiagnostics.IndexOutside(syntax.Span, range.Minimum == range.Maximum ? FormattableString.Invariant($"{range.Minimum}") : range.ToString(), array, bounds));
            return null;
        }

        long first = Math.Clamp(range.Minimum, bounds.Minimum, bounds.Maximum);
        long last = Math.Clamp(range.Maximum, bounds.Minimum, bounds.Maximum);
        if (last - first >= MostAlternatives)
        {
            _context.Diagnostics.Add(StructuredTextDiagnostics.NotCompared(
                syntax.Span,
                FormattableString.Invariant($"an index with more than {MostAlternatives} values"),
                "each of them is a case of its own there",
                "guard the index, or declare it with a smaller range"));
            return null;
        }

        return first == last
            ? [(_builder.True, first - bounds.Minimum)]
            : [.. Enumerable.Range(0, (int)(last - first + 1)).Select(step => (_builder.Equal(index.Value, _builder.Constant(first + step)), first + step - bounds.Minimum))];
    }
}
