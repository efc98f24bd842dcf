using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using Sequencer.Control.TransitionSystems;

namespace Sequencer.Proof.Certificates;

/// <summary>The comment at the head of a certificate, for the person who is to believe it.</summary>
internal static class CertificateHeader
{
    /// <summary>Starts each line that names an assumption; the checker reads the names behind it.</summary>
    public const string AssumptionLine = "; assumption leaned on: ";

    private const string FirstLine = "; certificate 1: a requirement that holds in every scan of every run\n";

    /// <summary>Begins a certificate whose step and requirement are asked part by part.</summary>
    public const string FirstLineByParts = "; certificate 2: a requirement that holds in every scan of every run, asked part by part\n";

    private const string Meaning = """
        ;
        ; A solver for SMT-LIB 2.6 (logic QF_LIA) gives three answers to this file. All three must be `unsat`:
        ;   1 initial     no initial state lies outside the invariant
        ;   2 step        no scan that starts inside the invariant, with the assumptions true, ends outside it
        ;   3 requirement no scan that starts inside the invariant, with the assumptions true, breaks the requirement
        ; Any other answer (`sat`, `unknown`, an error, fewer than three) proves nothing.

        """;

    private const string MeaningByParts = """
        ;
        ; A solver for SMT-LIB 2.6 (logic QF_LIA) gives {0} answers to this file. All of them must be `unsat`:
        ;   1 initial     no initial state lies outside the invariant
        ;   2 step        no scan that starts inside the invariant breaks these parts of it
        ;   3 requirement no scan that starts inside the invariant breaks these parts of the requirement
        ; Any other answer (`sat`, `unknown`, an error, fewer) proves nothing. Each question stands on the same text:
        ; inputs, states, invariant; what it needs of the scan it has between its own `(push 1)` and `(pop 1)`.

        """;

    /// <summary>What every certificate says of itself.</summary>
    private const string Caution = """
        ; The answers are about the text below. That the text says the same as the program is for
        ; the certificate check of the tool that wrote it to find out, from the program's source.
        ; A certificate supports the review by a competent person and replaces no hazard study, no
        ; functional-safety assessment and no local code. It is about the program, not about the plant.

        """;

    private const string Put = """
        ; what is kept twice of states and steps is one variable here: the certificates of the
        ; requirements UNIT.memory, in all variables, show that the copies never differ

        """;

    public static string Write(CertifiedSystem certified, ImmutableArray<Assumption> leanedOn) =>
        Write(FirstLine, certified.Whole, certified.Requirement, leanedOn)
            .Append(certified.IsPut ? Text(Put) : string.Empty).Append(Text(Meaning)).Append(Text(Caution)).ToString();

    /// <param name="system">Its assumptions are not used.</param>
    /// <param name="requirement">One of its requirements.</param>
    /// <param name="answers">How many questions the text asks.</param>
    public static string WriteByParts(TransitionSystem system, Requirement requirement, int answers) =>
        Write(FirstLineByParts, system, requirement, [])
            .Append(Text(MeaningByParts).Replace("{0}", answers.ToString(CultureInfo.InvariantCulture), StringComparison.Ordinal))
            .Append(Text(Caution)).ToString();

    private static string Text(string lines) => lines.ReplaceLineEndings("\n");

    private static StringBuilder Write(string firstLine, TransitionSystem system, Requirement requirement, ImmutableArray<Assumption> leanedOn)
    {
        StringBuilder text = new(firstLine);
        Line(text, "; system: ", FormattableString.Invariant($"{system.Name}, one scan every {system.ScanMilliseconds} ms"));
        Line(text, "; meaning: ", system.Meaning);
        Line(text, "; requirement: ", $"{requirement.Name} \"{requirement.Title}\"");
        Line(text, "; in words: ", requirement.Statement);
        foreach (Assumption assumption in leanedOn)
        {
            Line(text, AssumptionLine, assumption.Name);
            Line(text, ";   that is: ", assumption.Title);
        }

        if (leanedOn.IsEmpty)
        {
            text.Append("; no assumption was leaned on\n");
        }

        return text;
    }

    private static void Line(StringBuilder text, string head, string words) =>
        text.Append(head).Append(CertificateNames.OnOneLine(words)).Append('\n');
}
