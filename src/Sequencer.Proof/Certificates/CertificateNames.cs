using Sequencer.Control.TransitionSystems;

namespace Sequencer.Proof.Certificates;

/// <summary>
/// The names in a certificate. Variables keep their own; a name of the writer's starts with # and the
/// value after the scan ends in a prime, so that no name of a system can be taken for another.
/// </summary>
internal static class CertificateNames
{
    public const string Shared = "#";
    public const string InvariantPart = "#inv";
    public const string Fact = "#fact";
    public const string Found = "#found";
    public const string Ranges = "#ranges";
    public const string Invariant = "#invariant";
    public const string Assumed = "#assumed";
    public const string Assumption = "#assumption";
    public const string Required = "#required";

    /// <exception cref="ArgumentException">A variable has a name that SMT-LIB cannot carry: a defect of the lowering.</exception>
    public static void Demand(IEnumerable<Variable> variables)
    {
        foreach (Variable variable in variables)
        {
            if (!IsPlain(variable.Name))
            {
                throw new ArgumentException($"the name `{variable.Name}` cannot stand in a certificate", nameof(variables));
            }
        }
    }

    /// <summary>The system's own names for facts and outputs, as far as they are free and plain.</summary>
    public static Dictionary<Expression, string> Known(TransitionSystem system)
    {
        HashSet<string> taken = new(
            [.. system.Inputs.Select(input => input.Name), .. system.States.Select(state => state.Variable.Name)],
            StringComparer.Ordinal);
        IEnumerable<(string Name, Expression Value)> facts =
        [
            .. system.Definitions.Select(definition => (definition.Name, definition.Value)),
            .. system.Outputs.Select(output => (output.Name, output.Value)),
        ];
        Dictionary<Expression, string> known = [];
        foreach ((string name, Expression value) in facts)
        {
            if (!value.Operands.IsEmpty && IsPlain(name) && !known.ContainsKey(value) && taken.Add(name))
            {
                known.Add(value, name);
            }
        }

        return known;
    }

    /// <summary>Words of people on one line of a comment, whatever characters are in them.</summary>
    public static string OnOneLine(string words) =>
        string.Concat(words.Select(static character => char.IsControl(character) || character is '\u2028' or '\u2029' ? ' ' : character));

    private static bool IsPlain(string name) =>
        name.Length > 0 && name.All(static character => char.IsAscii(character) && !char.IsControl(character) && character is not ('|' or '\\' or '\'' or '#'));
}
