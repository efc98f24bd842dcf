using System.Globalization;
using System.Security.Cryptography;
using System.Text;

namespace Sequencer.Control.TransitionSystems;

/// <summary>
/// A fingerprint of what a system does: scan period, variables with their ranges, initial and next
/// values, outputs, alarms, assumptions and requirements. Layout of the source, titles, origins,
/// definitions, the order of declarations and the order in which expressions were made have no part in it.
/// Two systems of one hash behave alike; two that behave alike may be written differently and differ.
/// </summary>
public static class MeaningHash
{
    /// <summary>Counted up when the form that is hashed changes.</summary>
    private const string Form = "meaning 1";

    /// <summary>SHA-256 as 64 lower-case hexadecimal digits.</summary>
    public static string Of(TransitionSystem system)
    {
        ExpressionDigests digests = system.Digests;
        return Of(
            system.ScanMilliseconds,
            [
                .. Lines(digests, system.Inputs, system.States, system.Assumptions, system.Requirements),
                .. system.Outputs.Select(output => Line("output", Quote(output.Name), digests.Of(output.Value))),
                .. system.Alarms.Select(alarm => Line("alarm", Quote(alarm.Name), digests.Of(alarm.Raised))),
            ]);
    }

    /// <summary>The same of a part of the system: some of its variables and assumptions, and a requirement that need not be its own.</summary>
    public static string OfPart(
        TransitionSystem system, IEnumerable<Variable> inputs, IEnumerable<StateVariable> states, IReadOnlyCollection<Assumption> assumptions, Requirement requirement)
    {
        ExpressionDigests digests = new([requirement.Holds, .. assumptions.Select(assumption => assumption.Holds)], system.Digests);
        return Of(system.ScanMilliseconds, Lines(digests, inputs, states, assumptions, [requirement]));
    }

    private static IEnumerable<string> Lines(
        ExpressionDigests digests, IEnumerable<Variable> inputs, IEnumerable<StateVariable> states, IEnumerable<Assumption> assumptions, IEnumerable<Requirement> requirements) =>
    [
        .. inputs.Select(input => Line("input", Describe(input))),
        .. states.Select(state => Line(
            "state", Describe(state.Variable), Number(state.Initial), state.Retained ? "retained" : "volatile", digests.Of(state.Next))),
        .. assumptions.Select(assumption => Line("assumption", Quote(assumption.Name), digests.Of(assumption.Holds))),
        .. requirements.Select(requirement => Line("requirement", Quote(requirement.Name), requirement.Kind.ToString(), digests.Of(requirement.Holds))),
    ];

    private static string Of(int scanMilliseconds, IEnumerable<string> lines)
    {
        string text = string.Join('\n', [Form, Line("scan", Number(scanMilliseconds)), .. lines.Order(StringComparer.Ordinal)]);
        return Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(text)));
    }

    /// <summary>All expressions of a system.</summary>
    internal static IEnumerable<Expression> Roots(TransitionSystem system) =>
    [
        .. system.States.Select(state => state.Next),
        .. system.Outputs.Select(output => output.Value),
        .. system.Alarms.Select(alarm => alarm.Raised),
        .. system.Assumptions.Select(assumption => assumption.Holds),
        .. system.Requirements.Select(requirement => requirement.Holds),
    ];

    private static string Describe(Variable variable) =>
        $"{Quote(variable.Name)} {variable.Sort} {Number(variable.Range.Minimum)} {Number(variable.Range.Maximum)}";

    private static string Line(params string[] parts) => string.Join(' ', parts);

    private static string Number(long value) => value.ToString(CultureInfo.InvariantCulture);

    /// <summary>Length first, so that no name can be read as the end of one and the start of another.</summary>
    private static string Quote(string name) => $"{Number(name.Length)}:{name}";
}
