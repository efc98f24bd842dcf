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

        AddProducts(named);

        Dissolved = [.. Substance.All.Where(substance => named.Contains(substance.Name))];
        string[] filterAid = model.Drums.IsEmpty && model.Reagents.All(reagent => reagent.FilterAidGramsPerLitre == 0.0) ? [] : [FilterAidName];
        Names = [.. Dissolved.Select(substance => substance.Name), LimeName, SuspendedName, .. filterAid];
        FilterAid = Names.IndexOf(FilterAidName);
        Calcium = Names.IndexOf("calcium");
        Carbonate = Names.IndexOf("carbonate");
        Chloride = Names.IndexOf("chloride");
        Chromate = Names.IndexOf("chromate");
        Chromium = Names.IndexOf("chromium");
        Cyanate = Names.IndexOf("cyanate");
        Cyanide = Names.IndexOf("cyanide");
        CyanogenChloride = Names.IndexOf("cyanogen_chloride");
        Hypochlorite = Names.IndexOf("hypochlorite");
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

    public int Chloride { get; }

    public int Chromate { get; }

    public int Chromium { get; }

    public int Cyanate { get; }

    public int Cyanide { get; }

    public int CyanogenChloride { get; }

    public int Hypochlorite { get; }

    public int Sulphite { get; }

    public int Sulphate { get; }

    /// <summary>The plant has chromium(VI) and sulphite: then it has also what they become. So with the others.</summary>
    public bool HasReduction => Chromate >= 0 && Sulphite >= 0;

    public bool HasChlorination => Cyanide >= 0 && Hypochlorite >= 0;

    public bool HasCyanateOxidation => Cyanate >= 0 && Hypochlorite >= 0;

    public bool HasDechlorination => Sulphite >= 0 && Hypochlorite >= 0;

    /// <summary>
    /// Contents whose sum only comes and goes: each by itself, or with those that turn into it within the plant, as dissolving lime turns into calcium. It comes first. One of
    /// cyanogen chloride counts with the carbonate and with the chloride that it becomes.
    /// </summary>
    public ImmutableArray<ImmutableArray<int>> Conserved()
    {
        Dictionary<int, int[]> before = [];
        Gather(before, Calcium, Lime);
        if (HasReduction)
        {
            Gather(before, Chromium, Chromate);
        }

        if (HasReduction || HasDechlorination)
        {
            Gather(before, Sulphate, Sulphite);
        }

        if (Hypochlorite >= 0 || CyanogenChloride >= 0)
        {
            Gather(before, Chloride, Hypochlorite, CyanogenChloride);
        }

        Gather(before, HasCyanateOxidation ? Carbonate : Cyanate, HasChlorination ? Cyanide : -1, CyanogenChloride, HasCyanateOxidation ? Cyanate : -1);
        HashSet<int> turning = [.. before.Values.SelectMany(places => places)];
        return [.. Enumerable.Range(0, Count).Where(content => !turning.Contains(content))
            .Select(content => (ImmutableArray<int>)[content, .. before.GetValueOrDefault(content, [])])];
    }

    /// <summary>The part of the chemistry that this plant needs, its components in the order of <see cref="Dissolved"/>.</summary>
    public ChemicalSystem Chemistry()
    {
        string[] components = [.. Dissolved.Select(substance => substance.Component)];
        return ChemicalSystem.Everything.Restrict(components);
    }

    private static void Gather(Dictionary<int, int[]> before, int end, params ReadOnlySpan<int> starts)
    {
        if (end >= 0)
        {
            before[end] = [.. starts.ToArray().Where(place => place >= 0)];
        }
    }

    /// <summary>Whatever can come of the substances named.</summary>
    private static void AddProducts(SortedSet<string> named)
    {
        if (named.Contains("chromate") && named.Contains("sulphite"))
        {
            named.UnionWith(["chromium", "sulphate"]);
        }

        if (named.Contains("hypochlorite") && named.Contains("cyanide"))
        {
            named.Add("cyanogen_chloride");
        }

        if (named.Contains("cyanogen_chloride"))
        {
            named.UnionWith(["cyanate", "chloride"]);
        }

        if (named.Contains("hypochlorite") && named.Contains("cyanate"))
        {
            named.UnionWith(["carbonate", "chloride"]);
        }

        if (named.Contains("hypochlorite") && named.Contains("sulphite"))
        {
            named.UnionWith(["sulphate", "chloride"]);
        }
    }

    public void Add(double[] content, ImmutableArray<Amount> amounts)
    {
        foreach (Amount amount in amounts)
        {
            content[Dissolved.IndexOf(amount.Substance)] += amount.MolPerLitre;
        }
    }
}
