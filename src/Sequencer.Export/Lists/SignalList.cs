using System.Collections.Immutable;
using Sequencer.Language.Binding;
using Sequencer.Language.Programs;
using Sequencer.Language.Units;
using Sequencer.Text;

namespace Sequencer.Export.Lists;

/// <summary>Every signal of a site that has an address, in the order of the addresses: what is wired, and what it does without power.</summary>
public static class SignalList
{
    private const string Loop = "4 to 20 mA, NAMUR NE 43";

    private static readonly ImmutableArray<string> Columns =
        ["address", "tag", "description", "plant unit", "kind", "signal", "range", "de-energised", "safe", "emergency", "confirmed by", "source"];

    /// <param name="site">The programs.</param>
    /// <param name="root">What is left out at the beginning of the paths of the program's files.</param>
    public static ListTable Of(SiteProgram site, string root) => new(
        "signals",
        Columns,
        [.. site.Units.SelectMany(unit => Rows(unit, root)).OrderBy(row => row.Address, Comparer<DirectAddress>.Create(InOrder)).Select(row => row.Cells)]);

    private static IEnumerable<(DirectAddress Address, ImmutableArray<string> Cells)> Rows(UnitProgram unit, string root)
    {
        foreach (AnalogueInput input in unit.AnalogueInputs)
        {
            string range = Range(input.Minimum, input.Maximum, input.Resolution, input.Unit);
            yield return Row(input.Address, input.Tag, input.Description, "analogue input", Loop, range, "", "", "", "", input.Span);
        }

        foreach (SwitchInput input in unit.SwitchInputs)
        {
            string contact = input.NormallyClosed ? "contact opens when so" : "contact closes when so";
            yield return Row(input.Address, input.Tag, input.Description, "input", contact, "", "", "", "", "", input.Span);
        }

        foreach (Output output in unit.Outputs)
        {
            string[] confirming = output.Confirmation is { } confirmation ? [.. new[] { confirmation.On, confirmation.Off }.OfType<SwitchInput>().Select(input => input.Tag)] : [];
            yield return Row(
                output.Address,
                output.Tag,
                output.Description,
                output.Kind == OutputKind.Motor ? "output, motor" : "output, valve",
                "coil",
                "",
                Position(output, output.DeEnergised),
                Words(output, output.Safe),
                Words(output, output.Emergency),
                confirming.Length == 0 ? "" : $"{string.Join(", ", confirming)} within {output.Confirmation!.Within}",
                output.Span);
        }

        foreach (AnalogueOutput output in unit.AnalogueOutputs)
        {
            string range = Range(output.Minimum, output.Maximum, output.Resolution, output.Unit);
            yield return Row(
                output.Address,
                output.Tag,
                output.Description,
                "analogue output",
                "4 to 20 mA",
                range,
                AmountText.Show(output.Resolution * output.Minimum, output.Unit),
                AmountText.Show(output.Resolution * output.Safe, output.Unit),
                AmountText.Show(output.Resolution * output.Emergency, output.Unit),
                "",
                output.Span);
        }

        (DirectAddress, ImmutableArray<string>) Row(
            DirectAddress address, string tag, string description, string kind, string signal, string range, string deEnergised, string safe, string emergency, string confirmed, SourceSpan span) =>
            (address, [address.ToString(), tag, description, unit.Name, kind, signal, range, deEnergised, safe, emergency, confirmed, ListTable.Place(span, root)]);
    }

    private static string Range(long minimum, long maximum, Rational resolution, Unit unit) =>
        $"{AmountText.Show(resolution * minimum, unit)} to {AmountText.Show(resolution * maximum, unit)}";

    /// <summary>As the author wrote it; where only a position was written, the position.</summary>
    private static string Words(Output output, RestValue value) =>
        value.Last ? "as it was" : value.While is { } condition ? $"{Position(output, value.Value)} while {condition.Span.Text}, else {Position(output, value.Otherwise)}" : Position(output, value.Value);

    private static string Position(Output output, bool on) =>
        output.Kind == OutputKind.Motor ? (on ? "running" : "stopped") : on ? "open" : "closed";

    /// <summary>Inputs first, words after bits; by their place then, number by number.</summary>
    private static int InOrder(DirectAddress left, DirectAddress right)
    {
        int order = (left.Area, left.Size).CompareTo((right.Area, right.Size));
        for (int index = 0; order == 0 && index < Math.Min(left.Place.Length, right.Place.Length); index++)
        {
            order = left.Place[index].CompareTo(right.Place[index]);
        }

        return order != 0 ? order : left.Place.Length.CompareTo(right.Place.Length);
    }
}
