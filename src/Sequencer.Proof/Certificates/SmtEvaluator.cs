using System.Collections.Immutable;
using System.Globalization;

namespace Sequencer.Proof.Certificates;

/// <summary>
/// Gives every defined name of a certificate its value for one scan, from the text alone and by the
/// meaning that SMT-LIB gives the operators; true is 1. Names become places and terms instructions
/// once, since a certificate is run for hundreds of scans. Integers have 128 bits and overflow is an error:
/// no term of a certificate, made of 64-bit values, comes near.
/// </summary>
internal sealed class SmtEvaluator
{
    private readonly Dictionary<string, int> _places = new(StringComparer.Ordinal);
    private readonly List<Int128> _values = [];
    private readonly List<Instruction> _scan = [];

    public SmtEvaluator(ImmutableArray<SmtTerm> commands)
    {
        foreach (SmtTerm command in commands.Where(static command => command.Items is [{ Atom: "define-fun" }, { Atom: not null }, _, _, _]))
        {
            int value = Translate(command.Items[4], _scan);
            _places[command.Items[1].Atom!] = value;
        }
    }

    /// <summary>Where the value of a declared or defined name is, without its bars; null if the text does not have it.</summary>
    public int? PlaceOf(string name) => _places.TryGetValue($"|{name}|", out int place) ? place : null;

    /// <summary>The value at a place, as the last scan computed it or as it was set.</summary>
    public Int128 this[int place]
    {
        get => _values[place];
        set => _values[place] = value;
    }

    /// <summary>Computes all definitions in the order of the text, from what was set.</summary>
    public void Run() => Run(_scan);

    /// <summary>The value of a term that is no definition, from what was set.</summary>
    public Int128 Evaluate(SmtTerm term)
    {
        List<Instruction> code = [];
        int place = Translate(term, code);
        Run(code);
        return _values[place];
    }

    /// <summary>Recursion is safe: the reader of the text has limited the depth.</summary>
    private int Translate(SmtTerm term, List<Instruction> code)
    {
        if (term.Atom is { } atom)
        {
            return PlaceOfAtom(atom);
        }

        int[] operands = [.. term.Items.Skip(1).Select(operand => Translate(operand, code))];
        int target = NewPlace(0);
        code.Add(new Instruction(term.Items[0].Atom ?? string.Empty, target, operands));
        return target;
    }

    private int PlaceOfAtom(string atom)
    {
        if (!_places.TryGetValue(atom, out int place))
        {
            place = NewPlace(atom[0] == '|' || atom == "false" ? 0 : atom == "true" ? 1 : Int128.Parse(atom, NumberStyles.None, CultureInfo.InvariantCulture));
            _places.Add(atom, place);
        }

        return place;
    }

    private int NewPlace(Int128 value)
    {
        _values.Add(value);
        return _values.Count - 1;
    }

    private void Run(List<Instruction> code)
    {
        foreach (Instruction instruction in code)
        {
            _values[instruction.Target] = Apply(instruction.Operator, instruction.Operands);
        }
    }

    private Int128 Apply(string symbol, int[] operands) => symbol switch
    {
        "not" => 1 - _values[operands[0]],
        "and" => Has(operands, 0) ? 0 : 1,
        "or" => Has(operands, 1) ? 1 : 0,
        "=" => _values[operands[0]] == _values[operands[1]] ? 1 : 0,
        "<" => _values[operands[0]] < _values[operands[1]] ? 1 : 0,
        "<=" => operands.Zip(operands.Skip(1)).All(pair => _values[pair.First] <= _values[pair.Second]) ? 1 : 0,
        "+" => operands.Aggregate((Int128)0, (sum, operand) => checked(sum + _values[operand])),
        "-" => checked(-_values[operands[0]]),
        "*" => checked(_values[operands[0]] * _values[operands[1]]),
        "ite" => _values[operands[_values[operands[0]] == 1 ? 1 : 2]],
        _ => throw new InvalidOperationException($"no evaluation of {symbol}"),
    };

    private bool Has(int[] operands, Int128 value)
    {
        foreach (int operand in operands)
        {
            if (_values[operand] == value)
            {
                return true;
            }
        }

        return false;
    }

    private readonly record struct Instruction(string Operator, int Target, int[] Operands);
}
