using Sequencer.StructuredText.Syntax;

namespace Sequencer.StructuredText.Lowering;

/// <summary>Finds what a name, or names joined by points, stand for.</summary>
internal static class NameResolution
{
    /// <summary>The member, in-outs followed to what they stand for; null where it has been reported.</summary>
    public static Member? Resolve(LoweringContext context, PathSyntax path, BlockInstance frame)
    {
        Member? member = Follow(Find(context, path.Names[0].Text, frame));
        if (member is null)
        {
            context.Diagnostics.Add(StructuredTextDiagnostics.UndeclaredName(path.Names[0].Span, path.Names[0].Text));
            return null;
        }

        foreach (NameSyntax name in path.Names.Skip(1))
        {
            member = member is BlockInstance instance ? Connection(instance, name.Text) : null;
            if (member is null)
            {
                context.Diagnostics.Add(StructuredTextDiagnostics.NoSuchMember(name.Span, name.Text, path.ToString()[..^(name.Text.Length + 1)]));
                return null;
            }
        }

        return member;
    }

    public static Member? Find(LoweringContext context, string name, BlockInstance frame) =>
        frame.Members.TryGetValue(name, out Member? own) ? own : Global(context, name);

    /// <summary>The global of that name, which is part of what is read from here on.</summary>
    public static Member? Global(LoweringContext context, string name)
    {
        Member? global = context.Globals.GetValueOrDefault(name);
        if (global is Slot slot)
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

    private static Member? Follow(Member? member)
    {
        while (member is InOutMember { Bound: { } bound })
        {
            member = bound;
        }

        return member;
    }

    /// <summary>Why what the path stands for cannot be assigned from the frame, or null where it can.</summary>
    public static string? WhyNotAssignable(Slot slot, PathSyntax path, BlockInstance frame) =>
        slot.Role == SlotRole.Constant ? "it is a constant"
        : slot.Role == SlotRole.Input ? "it is an input"
        : slot.IsCounting ? "it counts the turns of the loop around this"
        : path.Names.Length > 1 ? slot.Section == VariableSectionKind.Output ? "it is an output of another block" : null
        : slot.Section == VariableSectionKind.Input && frame.Members.GetValueOrDefault(path.Names[0].Text) == slot ? "it is an input of this block"
        : null;

    /// <summary>What messages call the member.</summary>
    public static string Describe(Member member) => member switch
    {
        Slot slot => slot.Type.Name,
        BlockInstance instance => $"block {instance.Type}",
        _ => "an in-out that nothing was given to",
    };
}
