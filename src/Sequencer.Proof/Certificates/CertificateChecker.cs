using System.Collections.Immutable;
using Sequencer.Control.TransitionSystems;

namespace Sequencer.Proof.Certificates;

/// <summary>
/// Finds out whether a certificate's text is about this system and this requirement. A solver cannot:
/// it would discharge a text with an altered program or a weaker requirement as well. All but the
/// invariant is written anew from the system, and any difference refuses the certificate.
/// </summary>
public static class CertificateChecker
{
    /// <param name="system">Lowered anew from the source that the certificate is said to be about.</param>
    /// <param name="requirement">One of the system's requirements.</param>
    /// <param name="text">The certificate; nothing about it is trusted.</param>
    public static CertificateFinding Check(TransitionSystem system, Requirement requirement, string text)
    {
        if (!SmtReader.TryRead(text, out ImmutableArray<SmtTerm> commands, out string reason))
        {
            return CertificateFinding.Refused(reason);
        }

        if (text.StartsWith(CertificateHeader.FirstLineByParts, StringComparison.Ordinal))
        {
            return CheckParts(system, requirement, text, commands);
        }

        if (!TryReadAssumptions(system, text, out ImmutableArray<Assumption> leanedOn, out reason))
        {
            return CertificateFinding.Refused(reason);
        }

        CertifiedSystem certified = CertifiedSystem.Of(system, requirement);
        ImmutableArray<Assumption> own = certified.Assumptions(leanedOn);
        InvariantReader reader = new(system);
        reason = reader.Read(commands);
        if (reader.Invariant is not { } invariant || reason.Length > 0)
        {
            return CertificateFinding.Refused(reason);
        }

        CertificateText expected = new(certified, own, reader.Definitions, ReadStates(system, reader.Definitions));
        reason = FirstDifference(expected.Sections, text);
        if (reason.Length == 0)
        {
            reason = new CertificateLockstep(certified.System, certified.Requirement, own, invariant, commands).FirstDifference();
        }

        return reason.Length > 0 ? CertificateFinding.Refused(reason) : new CertificateFinding(string.Empty, leanedOn, invariant);
    }

    private static CertificateFinding CheckParts(TransitionSystem system, Requirement requirement, string text, ImmutableArray<SmtTerm> commands)
    {
        InvariantPartReader reader = new(system);
        string reason = reader.Read(commands);
        if (reason.Length > 0)
        {
            return CertificateFinding.Refused(reason);
        }

        PartwiseText expected = new(system, requirement, reader.Parts);
        reason = FirstDifference(expected.Sections, text);
        if (reason.Length == 0)
        {
            reason = new PartwiseLockstep(system, reader, expected.Questions, commands).FirstDifference();
        }

        return reason.Length > 0 ? CertificateFinding.Refused(reason) : new CertificateFinding(string.Empty, [], reader.Invariant);
    }

    private static bool TryReadAssumptions(TransitionSystem system, string text, out ImmutableArray<Assumption> leanedOn, out string reason)
    {
        HashSet<string> named = new(StringComparer.Ordinal);
        foreach (ReadOnlySpan<char> line in text.AsSpan().EnumerateLines())
        {
            if (line.IsEmpty || line[0] != ';')
            {
                break;
            }

            if (line.StartsWith(CertificateHeader.AssumptionLine, StringComparison.Ordinal))
            {
                named.Add(line[CertificateHeader.AssumptionLine.Length..].ToString());
            }
        }

        leanedOn = [.. system.Assumptions.Where(assumption => named.Remove(CertificateNames.OnOneLine(assumption.Name)))];
        reason = named.Count == 0 ? string.Empty : $"it leans on `{named.First()}`, which is no assumption of the system";
        return named.Count == 0;
    }

    /// <summary>The states that occur in the text of the invariant, folded away by simplification or not.</summary>
    private static IReadOnlyList<Variable> ReadStates(TransitionSystem system, ImmutableArray<SmtDefinition> invariant)
    {
        HashSet<string> atoms = new(StringComparer.Ordinal);
        Stack<SmtTerm> open = new(invariant.Select(static definition => definition.Body));
        while (open.TryPop(out SmtTerm? term))
        {
            atoms.Add(term.Atom ?? string.Empty);
            foreach (SmtTerm item in term.Items)
            {
                open.Push(item);
            }
        }

        return [.. system.States.Select(static state => state.Variable).Where(variable => atoms.Contains($"|{variable.Name}|"))];
    }

    private static string FirstDifference(ImmutableArray<CertificateSection> sections, string text)
    {
        int line = 1;
        int place = 0;
        foreach (CertificateSection section in sections)
        {
            foreach (string expected in section.Text.TrimEnd('\n').Split('\n'))
            {
                int end = text.IndexOf('\n', place);
                string found = text[place..(end < 0 ? text.Length : end)];
                if (end < 0 || !string.Equals(found, expected, StringComparison.Ordinal))
                {
                    return FormattableString.Invariant($"line {line}, {section.Holds}: it says `{Short(found)}`, the system says `{Short(expected)}`");
                }

                place = end + 1;
                line++;
            }
        }

        return place == text.Length ? string.Empty : FormattableString.Invariant($"line {line}: there is more text than there should be");
    }

    private static string Short(string line) => line.Length <= 120 ? line : $"{line[..120]}...";
}
