using System.Collections.Immutable;
using System.Security.Cryptography;
using System.Text;
using Sequencer.Control.TransitionSystems;
using Sequencer.Proof.Certificates;

namespace Sequencer.Proof.Remembering;

/// <summary>An invariant as SMT-LIB definitions over the states' names, as they stand in a certificate.</summary>
internal static class InvariantText
{
    /// <summary>Under what the last invariant for a requirement is kept, whatever the program was then.</summary>
    public static string Key(TransitionSystem system, Requirement requirement) =>
        Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes($"last invariant\n{system.Name}\n{requirement.Name}")));

    public static string Write(Expression invariant)
    {
        SmtTranslation translation = new([invariant], CertificateNames.InvariantPart, new Dictionary<Expression, string>());
        SmtDefinition found = new(CertificateNames.Found, Sort.Boolean, translation.Term(invariant));
        return string.Concat(translation.Definitions.Add(found).Select(SmtText.Define));
    }

    /// <summary>The invariant over the system's states; null where the text is none.</summary>
    public static Expression? Read(TransitionSystem system, string text)
    {
        InvariantReader reader = new(system);
        return SmtReader.TryRead(text, out ImmutableArray<SmtTerm> commands, out _) && reader.Read(commands).Length == 0 ? reader.Invariant : null;
    }
}
