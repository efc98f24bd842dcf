using System.Collections.Immutable;
using Sequencer.Language.Programs;

namespace Sequencer.Export.Writing;

/// <summary>Who owns shared equipment, in the block that holds all units: first come, first served, ties in the order of the site.</summary>
internal sealed class ClaimQueueText(SiteProgram site, IReadOnlyList<UnitText> units, Names names)
{
    /// <summary>The variables of the text with the program's names.</summary>
    public IEnumerable<ExportedVariable> Variables => States.Select(path => new ExportedVariable(path, names.Of(path)));

    public IEnumerable<string> Retained => States.Select(path => $"{names.Of(path)} : BOOL := FALSE;");

    public IEnumerable<string> Temporary =>
        from equipment in Queues
        from unit in equipment.Claimants
        select $"{OwnerName(equipment.Name, unit)} : BOOL;";

    private IEnumerable<Queue> Queues => site.Shared.Select(shared =>
    {
        string name = QualifiedName.Of(shared.Unit.Name, shared.Equipment.Name);
        return new Queue(name, shared.Equipment.Title, [.. site.ClaimantsOf(name).Select(unit => unit.Name)]);
    });

    private IEnumerable<string> States =>
        from queue in Queues
        from path in queue.Claimants.Select(unit => Claims(queue.Name, unit)).Concat(queue.Pairs.Select(pair => Ahead(queue.Name, pair.First, pair.Second)))
        select path;

    /// <summary>What is said of shared equipment below the unit that declares it.</summary>
    public static string OwnedBy(string equipment, string unit) => $"{equipment}.owned_by.{unit}";

    /// <summary>The variable that holds what a unit asks whether it owns.</summary>
    public string Name(SeenVariable owner) => names.Of(owner.Path);

    public void Owners(TextLines text)
    {
        foreach (Queue queue in Queues)
        {
            text.Blank();
            text.Comment($"Who owns {queue.Name} \"{queue.Title}\": the one that claims it and is ahead of all that claim it.");
            foreach (string unit in queue.Claimants)
            {
                IEnumerable<string> others = queue.Claimants.Where(other => other != unit)
                    .Select(other => $"((NOT {names.Of(Claims(queue.Name, other))}) OR {IsAhead(queue, unit, other)})");
                text.Add($"{OwnerName(queue.Name, unit)} := {UnitText.Bracketed(others.Prepend(names.Of(Claims(queue.Name, unit))), "AND", "TRUE")};");
            }
        }
    }

    public void Advance(TextLines text)
    {
        foreach (Queue queue in Queues)
        {
            text.Blank();
            text.Comment($"The queue for {queue.Name}: who waits keeps its place, who comes stands behind, ties go by the order of the units.");
            foreach ((string first, string second) in queue.Pairs)
            {
                string secondStays = $"({names.Of(Claims(queue.Name, second))} AND {Wants(queue.Name, second)})";
                string firstStays = $"({names.Of(Claims(queue.Name, first))} AND {Wants(queue.Name, first)})";
                text.Add($"IF NOT ({firstStays} AND {secondStays}) THEN {names.Of(Ahead(queue.Name, first, second))} := NOT {secondStays}; END_IF;");
            }

            foreach (string unit in queue.Claimants)
            {
                text.Add($"{names.Of(Claims(queue.Name, unit))} := {Wants(queue.Name, unit)};");
            }
        }
    }

    private string Wants(string equipment, string unit) => $"{unit}.{ClaimText.Request(units.First(one => one.Unit.Name == unit), equipment)}";

    private string IsAhead(Queue queue, string one, string other) => queue.Pairs.Contains((one, other))
        ? names.Of(Ahead(queue.Name, one, other))
        : $"(NOT {names.Of(Ahead(queue.Name, other, one))})";

    private string OwnerName(string equipment, string unit) => names.Of(OwnedBy(equipment, unit));

    private static string Claims(string equipment, string unit) => $"{equipment}.{unit}.claims";

    private static string Ahead(string equipment, string first, string second) => $"{equipment}.{first}.ahead_of_{second}";

    private sealed record Queue(string Name, string Title, ImmutableArray<string> Claimants)
    {
        public IEnumerable<(string First, string Second)> Pairs =>
            from first in Enumerable.Range(0, Claimants.Length)
            from second in Enumerable.Range(first + 1, Claimants.Length - first - 1)
            select (Claimants[first], Claimants[second]);
    }
}
