using Sequencer.Language.Programs;
using Sequencer.Language.Syntax;
using Sequencer.Language.Units;

namespace Sequencer.Language.Binding;

/// <summary>An amount by which a reading moves: above zero, on the reading's steps.</summary>
internal static class ReadingChange
{
    public static LiteralQuantity? Bind(
        AmountSyntax? amount, AnalogueInput signal, LinePlace place, AmountBinder amounts, DeclarationBinder declarations)
    {
        if (amount is null || amounts.Positive(amount, signal.Unit.Dimension, place) is not { } value)
        {
            return null;
        }

        LiteralQuantity change = new(value, signal.Unit.Dimension, place.At(amount));
        Unit? unit = amount.Unit is null ? null : UnitTable.Find(amount.Unit.Text);
        return declarations.Checks.OnStep(new WrittenLiteral(change, unit), signal.Resolution) ? change : null;
    }
}
