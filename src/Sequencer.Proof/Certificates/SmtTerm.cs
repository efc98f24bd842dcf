using System.Collections.Immutable;

namespace Sequencer.Proof.Certificates;

/// <summary>
/// A term or command of SMT-LIB as its brackets say: an atom, exactly as written, or a list. In a
/// certificate each name of ours stands between bars and each operator does not.
/// </summary>
internal sealed class SmtTerm
{
    private SmtTerm(string? atom, ImmutableArray<SmtTerm> items)
    {
        Atom = atom;
        Items = items;
        Depth = items.IsEmpty ? 0 : 1 + items.Max(static item => item.Depth);
    }

    /// <summary>The text of an atom, null for a list.</summary>
    public string? Atom { get; }

    public ImmutableArray<SmtTerm> Items { get; }

    /// <summary>Nesting of brackets; no list in a certificate is deeper than <see cref="SmtReader.DeepestNesting"/>.</summary>
    public int Depth { get; }

    public bool IsName => Atom is not null && Atom[0] == '|';

    public static SmtTerm Word(string atom) => new(atom, []);

    public static SmtTerm Name(string name) => Word($"|{name}|");

    public static SmtTerm List(ImmutableArray<SmtTerm> items) => new(null, items);

    public static SmtTerm Apply(string symbol, params IEnumerable<SmtTerm> operands) => List([Word(symbol), .. operands]);

    /// <summary>The conjunction; SMT-LIB wants two operands or more for one.</summary>
    public static SmtTerm And(ImmutableArray<SmtTerm> operands) => operands.Length switch
    {
        0 => Word("true"),
        1 => operands[0],
        _ => Apply("and", operands),
    };

    /// <summary>The same about the state after the scan: each name x becomes x'. Terms are shallow, so this may recurse.</summary>
    public SmtTerm Primed() => this switch
    {
        { IsName: true, Atom: { } atom } => Word($"{atom[..^1]}'|"),
        { Atom: not null } => this,
        _ => List([.. Items.Select(static item => item.Primed())]),
    };
}
