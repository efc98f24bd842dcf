using System.Collections.Immutable;
using System.Text;
using Sequencer.Control.TransitionSystems;

namespace Sequencer.Proof.Certificates;

/// <summary>The comment at the head of a certificate, for the person who is to believe it.</summary>
internal static class CertificateHeader
{
    /// <summary>Starts each line that names an assumption; the checker reads the names behind it.</summary>
    public const string AssumptionLine = "; assumption leaned on: ";

    private const string FirstLine = "; certificate 1: a requirement that holds in every scan of every run\n";

    private const string Meaning = """
        ;
        ; A solver for SMT-LIB 2.6 (logic QF_LIA) gives three answers to this file. All three must be `unsat`:
        ;   1 initial     no initial state lies outside the invariant
        ;   2 step        no scan that starts inside the invariant, with the assumptions true, ends outside it
        ;   3 requirement no scan that starts inside the invariant, with the assumptions true, breaks the requirement
        ; Any other answer (`sat`, `unknown`, an error, fewer than three) proves nothing.
        ; The answers are about the text below. That the text says the same as the program is for
        ; the certificate check of the tool that wrote it to find out, from the program's source.
        ; A certificate supports the review by a competent person and replaces no hazard study, no
        ; functional-safety assessment and no local code. It is about the program, not about the plant.

        """;

    public static string Write(TransitionSystem system, Requirement requirement, ImmutableArray<Assumption> leanedOn)
    {
        StringBuilder text = new(FirstLine);
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

        return text.Append(Meaning.ReplaceLineEndings("\n")).ToString();
    }

    private static void Line(StringBuilder text, string head, string words) =>
        text.Append(head).Append(CertificateNames.OnOneLine(words)).Append('\n');
}
