using System.Text;
using Sequencer.Control.TransitionSystems;

namespace Sequencer.Proof.Certificates;

/// <summary>Terms as text, always laid out the same way.</summary>
internal static class SmtText
{
    private const int LongestLine = 110;

    public static string SortName(Sort sort) => sort == Sort.Boolean ? "Bool" : "Int";

    public static string Define(SmtDefinition definition) =>
        $"(define-fun |{definition.Name}| () {SortName(definition.Sort)}{Body(definition.Body)})\n";

    public static string Assert(SmtTerm term) => $"(assert{Body(term)})\n";

    /// <summary>The definition as a constant with an equation.</summary>
    public static string Equate(SmtDefinition definition) =>
        $"(declare-const |{definition.Name}| {SortName(definition.Sort)})\n{Assert(SmtTerm.Apply("=", SmtTerm.Name(definition.Name), definition.Body))}";

    public static string Declare(Variable variable) => $"(declare-const |{variable.Name}| {SortName(variable.Sort)})\n";

    public static string Input(Variable input) =>
        input.Sort == Sort.Boolean ? Declare(input) : Declare(input) + Assert(InRange(input));

    public static SmtTerm InRange(Variable variable) => SmtTerm.Apply(
        "<=",
        SmtTranslation.Integer(variable.Range.Minimum),
        SmtTerm.Name(variable.Name),
        SmtTranslation.Integer(variable.Range.Maximum));

    /// <summary>The state has its initial value.</summary>
    public static SmtTerm Begins(StateVariable state) =>
        SmtTerm.Apply("=", SmtTerm.Name(state.Variable.Name), SmtTranslation.Constant(state.Variable, state.Initial));

    public static CertificateSection Section(string holds, string title, IEnumerable<string> lines) =>
        new(holds, string.Concat([$"\n; {title}\n", .. lines]));

    public static string Term(SmtTerm term)
    {
        StringBuilder text = new();
        Append(term, text);
        return text.ToString();
    }

    /// <summary>On the command's own line if it is short, else one operand a line.</summary>
    private static string Body(SmtTerm term)
    {
        string line = Term(term);
        if (line.Length <= LongestLine || term.Atom is not null)
        {
            return $" {line}";
        }

        StringBuilder text = new();
        text.Append("\n  (").Append(Term(term.Items[0]));
        foreach (SmtTerm operand in term.Items.AsSpan()[1..])
        {
            text.Append("\n    ").Append(Term(operand));
        }

        return text.Append(')').ToString();
    }

    /// <summary>Recursion is safe: terms are never deeper than <see cref="SmtReader.DeepestNesting"/>.</summary>
    private static void Append(SmtTerm term, StringBuilder text)
    {
        if (term.Atom is not null)
        {
            text.Append(term.Atom);
            return;
        }

        text.Append('(');
        for (int index = 0; index < term.Items.Length; index++)
        {
            if (index > 0)
            {
                text.Append(' ');
            }

            Append(term.Items[index], text);
        }

        text.Append(')');
    }
}
