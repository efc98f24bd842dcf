using System.Collections.Immutable;

namespace Sequencer.Plant.Chemistry;

/// <summary>
/// Components, dissolved species and solids with their constants; immutable. The proton is a component too but has no
/// place in <see cref="Components"/>: its total is closed by the balance of charge. <see cref="Species"/> begins with
/// H+ and the components' own ions, in the order of <see cref="Components"/>.
/// </summary>
public sealed class ChemicalSystem
{
    private ChemicalSystem(ImmutableArray<Component> components, ImmutableArray<AqueousSpecies> derived, ImmutableArray<Solid> solids)
    {
        Components = components;
        Derived = derived;
        Solids = solids;
        Species = [Master(ReactionEquation.Proton, 1, ActivityCoefficient.Davies, "definition"),
            .. components.Select(component => Master(component.Name, component.Charge, component.Activity, component.Source)),
            .. derived];
    }

    /// <summary>The order of every array of totals, in mol per kg water.</summary>
    public ImmutableArray<Component> Components { get; }

    public ImmutableArray<AqueousSpecies> Species { get; }

    /// <summary>The order of every array of solids.</summary>
    public ImmutableArray<Solid> Solids { get; }

    private ImmutableArray<AqueousSpecies> Derived { get; }

    /// <summary>The constants that come with this library (MINTEQA2 version 4).</summary>
    public static ChemicalSystem Default() => Read(DataTable.Text("minteq-v4.txt"));

    /// <summary><see cref="Default"/> with aluminium, copper, zinc, nickel, lead and cadmium; restrict it to what is there for speed.</summary>
    public static ChemicalSystem DefaultWithMetals() => Default().With(DataTable.Text("minteq-v4-metals.txt"));

    /// <summary><see cref="Default"/> with chromium(VI), chromium(III) and sulphite; restrict it to what is there for speed.</summary>
    public static ChemicalSystem DefaultWithChromium() => Default().With(DataTable.Text("minteq-v4-chromium.txt"));

    /// <summary>All of it, with magnesium, ferrous iron, fluoride, phosphate, ammonia, cyanide and hypochlorite too; restrict it to what is there for speed.</summary>
    public static ChemicalSystem Everything { get; } = DefaultWithMetals()
        .With(DataTable.Text("minteq-v4-chromium.txt"))
        .With(DataTable.Text("minteq-v4-ions.txt"))
        .With(DataTable.Text("chlorine-cyanate.txt"));

    /// <summary>A system from the text of a table of constants, in the format that the default table's head describes.</summary>
    /// <exception cref="FormatException">a row is wrong; the message names it</exception>
    public static ChemicalSystem Read(string table) => new ChemicalSystem([], [], []).With(table);

    /// <summary>This system with the rows of another table added; a row for a name that exists replaces it in its place.</summary>
    /// <exception cref="FormatException">a row is wrong; the message names it</exception>
    public ChemicalSystem With(string table)
    {
        ReactionTableContent content = ReactionTable.Parse(table);
        ChemicalSystem system = new(
            Merged(Components, content.Components, component => component.Name),
            Merged(Derived, content.Species, species => species.Name),
            Merged(Solids, content.Solids, solid => solid.Name));
        system.RequireKnownComponents();
        return system;
    }

    /// <summary>
    /// Only these components, with the species and solids that are made of nothing else: a smaller system is solved faster.
    /// The result keeps the order of the names given.
    /// </summary>
    /// <exception cref="ArgumentException">a name is unknown</exception>
    public ChemicalSystem Restrict(params ReadOnlySpan<string> componentNames)
    {
        ImmutableArray<Component>.Builder kept = ImmutableArray.CreateBuilder<Component>(componentNames.Length);
        foreach (string name in componentNames)
        {
            kept.Add(Components[ComponentIndex(name)]);
        }

        HashSet<string> names = [ReactionEquation.Proton, .. kept.Select(component => component.Name)];
        bool Made(Stoichiometry of) => of.Components.All(term => names.Contains(term.Component));
        return new(kept.DrainToImmutable(), [.. Derived.Where(species => Made(species.Formation))], [.. Solids.Where(solid => Made(solid.Dissolution))]);
    }

    /// <summary>The place of a component, as <c>Ca+2</c>, in <see cref="Components"/>.</summary>
    /// <exception cref="ArgumentException">the name is unknown</exception>
    public int ComponentIndex(string name) => IndexOf(Components, component => component.Name, name, "component");

    /// <summary>The place of a species in <see cref="Species"/>.</summary>
    /// <exception cref="ArgumentException">the name is unknown</exception>
    public int SpeciesIndex(string name) => IndexOf(Species, species => species.Name, name, "species");

    /// <summary>The place of a solid in <see cref="Solids"/>.</summary>
    /// <exception cref="ArgumentException">the name is unknown</exception>
    public int SolidIndex(string name) => IndexOf(Solids, solid => solid.Name, name, "solid");

    private static int IndexOf<T>(ImmutableArray<T> items, Func<T, string> nameOf, string name, string kind)
    {
        for (int index = 0; index < items.Length; index++)
        {
            if (string.Equals(nameOf(items[index]), name, StringComparison.Ordinal))
            {
                return index;
            }
        }

        throw new ArgumentException($"the chemical system has no {kind} `{name}`; it has {string.Join(", ", items.Select(nameOf))}", nameof(name));
    }

    private static ImmutableArray<T> Merged<T>(ImmutableArray<T> old, ImmutableArray<T> added, Func<T, string> nameOf)
    {
        List<T> merged = [.. old];
        foreach (T item in added)
        {
            int place = merged.FindIndex(existing => string.Equals(nameOf(existing), nameOf(item), StringComparison.Ordinal));
            if (place < 0)
            {
                merged.Add(item);
            }
            else
            {
                merged[place] = item;
            }
        }

        return [.. merged];
    }

    private static AqueousSpecies Master(string name, int charge, ActivityCoefficient activity, string source) =>
        new(name, charge, new([new(name, 1)], 0), EquilibriumConstant.One, activity, source);

    private void RequireKnownComponents()
    {
        HashSet<string> names = [ReactionEquation.Proton, .. Components.Select(component => component.Name)];
        foreach ((string owner, Stoichiometry stoichiometry) in Derived.Select(species => (species.Name, species.Formation))
            .Concat(Solids.Select(solid => (solid.Name, solid.Dissolution))))
        {
            foreach (ComponentCoefficient term in stoichiometry.Components)
            {
                if (!names.Contains(term.Component))
                {
                    throw new FormatException($"`{owner}` is made of `{term.Component}`, which is no component");
                }
            }
        }
    }
}
