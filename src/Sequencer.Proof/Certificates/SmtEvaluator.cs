using System.Collections.Immutable;
using System.Globalization;
using System.Numerics;

namespace Sequencer.Proof.Certificates;

/// <summary>
/// Gives every defined name of a certificate its value for one scan, from the text alone and by the
/// meaning that SMT-LIB gives the operators; true is 1. Integers are unbounded, as in SMT-LIB.
/// </summary>
internal sealed class SmtEvaluator
{
    private readonly ImmutableArray<(string Name, SmtTerm Body)> _definitions;
    private readonly Dictionary<string, BigInteger> _values = new(StringComparer.Ordinal) { ["true"] = 1, ["false"] = 0 };

    public SmtEvaluator(ImmutableArray<SmtTerm> commands)
    {
        _definitions =
        [
            .. commands.Where(static command => command.Items is [{ Atom: "define-fun" }, { Atom: not null }, _, _, _])
                .Select(static command => (command.Items[1].Atom ?? string.Empty, command.Items[4])),
        ];
    }

    /// <summary>Sets a declared name, without its bars.</summary>
    public void Set(string name, long value) => _values[$"|{name}|"] = value;

    /// <summary>The value of a declared or defined name, without its bars.</summary>
    public BigInteger this[string name] => _values[$"|{name}|"];

    /// <summary>Computes all definitions in the order of the text, from what was set.</summary>
    public void Run()
    {
        foreach ((string name, SmtTerm body) in _definitions)
        {
            _values[name] = Evaluate(body);
        }
    }

    /// <summary>Recursion is safe: the reader of the text has limited the depth.</summary>
    public BigInteger Evaluate(SmtTerm term)
    {
        if (term.Atom is { } atom)
        {
            return Look(atom);
        }

        BigInteger[] operands = new BigInteger[term.Items.Length - 1];
        for (int index = 0; index < operands.Length; index++)
        {
            operands[index] = Evaluate(term.Items[index + 1]);
        }

        return term.Items[0].Atom switch
        {
            "not" => 1 - operands[0],
            "and" => operands.Min(),
            "or" => operands.Max(),
            "=" => operands[0] == operands[1] ? 1 : 0,
            "<" => operands[0] < operands[1] ? 1 : 0,
            "<=" => operands.Zip(operands.Skip(1)).All(static pair => pair.First <= pair.Second) ? 1 : 0,
            "+" => operands.Aggregate(BigInteger.Add),
            "-" => -operands[0],
            "*" => operands[0] * operands[1],
            "ite" => operands[0].IsOne ? operands[1] : operands[2],
            _ => throw new InvalidOperationException($"no evaluation of {SmtText.Term(term.Items[0])}"),
        };
    }

    private BigInteger Look(string atom)
    {
        if (!_values.TryGetValue(atom, out BigInteger value))
        {
            value = BigInteger.Parse(atom, NumberStyles.None, CultureInfo.InvariantCulture);
            _values[atom] = value;
        }

        return value;
    }
}
