using Sequencer.Control.TransitionSystems;
using Sequencer.StructuredText.Syntax;
using Sequencer.StructuredText.Types;
using Sequencer.Text;

namespace Sequencer.StructuredText.Lowering;

/// <summary>
/// EXIT, CONTINUE and RETURN as variables: each is true once it was done, and what stands behind it runs only where none is. They
/// merge like all variables, so a jump under a condition needs no rule of its own.
/// </summary>
internal sealed record Jumps(Slot? Return, Slot? Exit, Slot? Continue)
{
    public static Jumps None { get; } = new(null, null, null);

    public static Jumps OfBody(ExpressionBuilder builder, Origin origin) => new(Flag(builder, "RETURN", origin), null, null);

    public Jumps OfLoop(ExpressionBuilder builder, Origin origin) =>
        this with { Exit = Flag(builder, "EXIT", origin), Continue = Flag(builder, "CONTINUE", origin) };

    public Slot? Of(JumpKind kind) => kind switch { JumpKind.Exit => Exit, JumpKind.Continue => Continue, _ => Return };

    /// <summary>Whether something has left what runs.</summary>
    public Expression Left(ExpressionBuilder builder, Store store) =>
        builder.Or(new[] { Return, Exit, Continue }.OfType<Slot>().Select(store.Get).OfType<Expression>());

    /// <summary>Says that nothing has: where it is known.</summary>
    public void Clear(ExpressionBuilder builder, Store store)
    {
        foreach (Slot slot in new[] { Return, Exit, Continue }.OfType<Slot>().Where(slot => store.Get(slot) is { IsFalse: false }))
        {
            store.Set(slot, builder.False);
        }
    }

    private static Slot Flag(ExpressionBuilder builder, string name, Origin origin) =>
        new(name, ElementaryTypes.Boolean, SlotRole.Temporary, VariableSectionKind.Local, origin) { Entry = builder.False };
}
