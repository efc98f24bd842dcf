using System.Globalization;
using Sequencer.Control.TransitionSystems;

namespace Sequencer.Proof.Certificates;

/// <summary>Terms of a certificate's invariant as expressions: over the names that were added, with the operators of this format only.</summary>
internal sealed class SmtExpressions
{
    private readonly Dictionary<string, Expression> _values = new(StringComparer.Ordinal);

    public ExpressionBuilder Builder { get; } = new();

    /// <param name="name">With its bars.</param>
    /// <param name="value">What it stands for.</param>
    public void Add(string name, Expression value) => _values.Add(name, value);

    /// <summary>The term as an expression, or what is wrong with it. Recursion is safe: the reader of the text has limited the depth.</summary>
    public bool TryTranslate(SmtTerm term, out Expression value, out string problem)
    {
        value = Builder.False;
        if (term.Atom is { } atom)
        {
            problem = TryAtom(atom, out value) ? string.Empty : $"reads `{atom}`, which is neither a state nor an earlier part of it";
            return problem.Length == 0;
        }

        if (term.Items is [{ Atom: "-" }, { Atom: { } digits }] && long.TryParse($"-{digits}", NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out long negative))
        {
            value = Builder.Constant(negative);
            problem = string.Empty;
            return true;
        }

        if (term.Items is not [{ Atom: { } symbol }, ..])
        {
            problem = "applies no operator";
            return false;
        }

        List<Expression> operands = [];
        foreach (SmtTerm item in term.Items.AsSpan()[1..])
        {
            if (!TryTranslate(item, out Expression operand, out problem))
            {
                return false;
            }

            operands.Add(operand);
        }

        return SmtOperators.TryApply(Builder, symbol, operands, out value, out problem);
    }

    private bool TryAtom(string atom, out Expression value)
    {
        value = Builder.Constant(atom == "true");
        if (atom is "true" or "false")
        {
            return true;
        }

        if (long.TryParse(atom, NumberStyles.None, CultureInfo.InvariantCulture, out long number))
        {
            value = Builder.Constant(number);
            return true;
        }

        bool known = _values.TryGetValue(atom, out Expression? found);
        value = found ?? value;
        return known;
    }
}
