using System.Collections.Immutable;
using System.Globalization;
using Sequencer.Control.TransitionSystems;

namespace Sequencer.Proof.Certificates;

/// <summary>
/// Reads the invariant out of a certificate: definitions over states of the system and over one
/// another, each after those it uses, of the right sorts and with the operators of this format only.
/// </summary>
internal sealed class InvariantReader
{
    private readonly SmtExpressions _expressions = new();
    private readonly ImmutableArray<SmtDefinition>.Builder _definitions = ImmutableArray.CreateBuilder<SmtDefinition>();

    public InvariantReader(TransitionSystem system)
    {
        foreach (StateVariable state in system.States)
        {
            _expressions.Add($"|{state.Variable.Name}|", _expressions.Builder.Variable(state.Variable));
        }
    }

    public ImmutableArray<SmtDefinition> Definitions => _definitions.ToImmutable();

    /// <summary>The whole invariant, null until <see cref="CertificateNames.Found"/> was read.</summary>
    public Expression? Invariant { get; private set; }

    /// <summary>Takes the definitions of the invariant from a certificate's commands; a reason if they are not sound.</summary>
    public string Read(ImmutableArray<SmtTerm> commands)
    {
        foreach (SmtTerm command in commands)
        {
            if (command.Items is [{ Atom: "define-fun" }, { Atom: { } name }, { Atom: null, Items.Length: 0 }, { Atom: { } sort }, { } body]
                && IsPart(name))
            {
                string problem = Add(name, sort, body);
                if (problem.Length > 0)
                {
                    return $"the definition of {name} in the invariant {problem}";
                }
            }
        }

        return Invariant is null ? "there is no invariant in the text" : string.Empty;
    }

    private static bool IsPart(string name) =>
        name == $"|{CertificateNames.Found}|"
        || (name.StartsWith($"|{CertificateNames.InvariantPart}", StringComparison.Ordinal)
            && name.AsSpan(1 + CertificateNames.InvariantPart.Length).TrimEnd('|') is { Length: > 0 } number
            && number.IndexOfAnyExceptInRange('0', '9') < 0);

    private string Add(string name, string sort, SmtTerm body)
    {
        string expected = CertificateNames.InvariantPart + (_definitions.Count + 1).ToString(CultureInfo.InvariantCulture);
        bool last = name == $"|{CertificateNames.Found}|";
        if (Invariant is not null || (!last && name != $"|{expected}|"))
        {
            return "is out of its order";
        }

        if (!_expressions.TryTranslate(body, out Expression value, out string problem))
        {
            return problem;
        }

        if (sort != SmtText.SortName(value.Sort) || (last && value.Sort != Sort.Boolean))
        {
            return $"is said to be of sort {sort}";
        }

        _expressions.Add(name, value);
        _definitions.Add(new SmtDefinition(name[1..^1], value.Sort, body));
        Invariant = last ? value : null;
        return string.Empty;
    }
}
