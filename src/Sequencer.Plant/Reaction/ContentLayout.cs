using System.Collections.Immutable;
using Sequencer.Plant.Chemistry;
using Sequencer.Plant.Description;

namespace Sequencer.Plant.Reaction;

/// <summary>
/// What a litre of water is made of, as one array: the dissolved substances that this plant names
/// (mol), then undissolved lime (mol), then other suspended solids (g), then filter aid (g) where the plant has it.
/// </summary>
internal sealed class ContentLayout
{
    private const string LimeName = "undissolved_lime";
    private const string SuspendedName = "suspended";
    private const string FilterAidName = "filter_aid";

    public ContentLayout(PlantModel model)
    {
        SortedSet<string> named = new(StringComparer.Ordinal);
        named.UnionWith(model.Supplies.Select(supply => supply.BalancedBy.Name));
        named.UnionWith(model.Supplies.SelectMany(supply => supply.Dissolved).Select(amount => amount.Substance.Name));
        named.UnionWith(model.Reagents.SelectMany(reagent => reagent.Dissolved).Select(amount => amount.Substance.Name));
        if (model.Reagents.Any(reagent => reagent.LimeMolPerLitre > 0.0))
        {
            named.Add("calcium");
        }

        if (named.Contains("chromate") && named.Contains("sulphite"))
        {
            named.UnionWith(["chromium", "sulphate"]);
        }

        Dissolved = [.. Substance.All.Where(substance => named.Contains(substance.Name))];
        string[] filterAid = model.Drums.IsEmpty && model.Reagents.All(reagent => reagent.FilterAidGramsPerLitre == 0.0) ? [] : [FilterAidName];
        Names = [.. Dissolved.Select(substance => substance.Name), LimeName, SuspendedName, .. filterAid];
        FilterAid = Names.IndexOf(FilterAidName);
        Calcium = Names.IndexOf("calcium");
        Carbonate = Names.IndexOf("carbonate");
        Chromate = Names.IndexOf("chromate");
        Chromium = Names.IndexOf("chromium");
        Sulphite = Names.IndexOf("sulphite");
        Sulphate = Names.IndexOf("sulphate");
    }

    /// <summary>The dissolved substances; they come first in every array.</summary>
    public ImmutableArray<Substance> Dissolved { get; }

    public ImmutableArray<string> Names { get; }

    public int Count => Names.Length;

    public int Lime => Dissolved.Length;

    public int Suspended => Dissolved.Length + 1;

    /// <summary>-1 where the plant has neither a drum filter nor filter aid.</summary>
    public int FilterAid { get; }

    /// <summary>Counted in grams; what is not is in moles.</summary>
    public bool IsWeighed(int content) => content == Suspended || content == FilterAid;

    /// <summary>-1 where the plant has no calcium (then it has no lime either).</summary>
    public int Calcium { get; }

    /// <summary>-1 where the plant has no carbonate.</summary>
    public int Carbonate { get; }

    public int Chromate { get; }

    public int Chromium { get; }

    public int Sulphite { get; }

    public int Sulphate { get; }

    /// <summary>The plant has chromium(VI) and sulphite: then it has also what they become.</summary>
    public bool HasReduction => Chromate >= 0 && Sulphite >= 0;

    /// <summary>The content that this one turns into within the plant, as dissolving lime turns into calcium; -1 for none.</summary>
    public int TurnsInto(int content) =>
        content == Lime ? Calcium
        : !HasReduction ? -1
        : content == Chromate ? Chromium
        : content == Sulphite ? Sulphate
        : -1;

    /// <summary>The part of the chemistry that this plant needs, its components in the order of <see cref="Dissolved"/>.</summary>
    public ChemicalSystem Chemistry()
    {
        string[] components = [.. Dissolved.Select(substance => substance.Component)];
        return ChemicalSystem.Everything.Restrict(components);
    }

    public void Add(double[] content, ImmutableArray<Amount> amounts)
    {
        foreach (Amount amount in amounts)
        {
            content[Dissolved.IndexOf(amount.Substance)] += amount.MolPerLitre;
        }
    }
}
