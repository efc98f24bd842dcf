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
    private readonly ExpressionBuilder _builder = new();
    private readonly Dictionary<string, Expression> _values = new(StringComparer.Ordinal);
    private readonly ImmutableArray<SmtDefinition>.Builder _definitions = ImmutableArray.CreateBuilder<SmtDefinition>();

    public InvariantReader(TransitionSystem system)
    {
        foreach (StateVariable state in system.States)
        {
            _values.Add($"|{state.Variable.Name}|", _builder.Variable(state.Variable));
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

        if (!TryTranslate(body, out Expression value, out string problem))
        {
            return problem;
        }

        if (sort != SmtText.SortName(value.Sort) || (last && value.Sort != Sort.Boolean))
        {
            return $"is said to be of sort {sort}";
        }

        _values.Add(name, value);
        _definitions.Add(new SmtDefinition(name[1..^1], value.Sort, body));
        Invariant = last ? value : null;
        return string.Empty;
    }

    /// <summary>Recursion is safe: the reader of the text has limited the depth.</summary>
    private bool TryTranslate(SmtTerm term, out Expression value, out string problem)
    {
        value = _builder.False;
        if (term.Atom is { } atom)
        {
            problem = TryAtom(atom, out value) ? string.Empty : $"reads `{atom}`, which is neither a state nor an earlier part of it";
            return problem.Length == 0;
        }

        if (term.Items is [{ Atom: "-" }, { Atom: { } digits }] && long.TryParse($"-{digits}", NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out long negative))
        {
            value = _builder.Constant(negative);
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

        return SmtOperators.TryApply(_builder, symbol, operands, out value, out problem);
    }

    private bool TryAtom(string atom, out Expression value)
    {
        value = _builder.Constant(atom == "true");
        if (atom is "true" or "false")
        {
            return true;
        }

        if (long.TryParse(atom, NumberStyles.None, CultureInfo.InvariantCulture, out long number))
        {
            value = _builder.Constant(number);
            return true;
        }

        bool known = _values.TryGetValue(atom, out Expression? found);
        value = found ?? value;
        return known;
    }
}
