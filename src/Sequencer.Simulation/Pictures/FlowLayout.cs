using Sequencer.Plant.Ledger;
using Sequencer.Simulation.Words;

namespace Sequencer.Simulation.Pictures;

/// <summary>
/// Boxes in columns from where water comes from to where it goes to, and bands between them as wide as what went through. A band that leads
/// back to an earlier column is a return.
/// </summary>
internal sealed class FlowLayout
{
    /// <summary>Litres below which a line counts as unused.</summary>
    private const double Least = 0.0005;

    private const double TallestColumn = 430;
    private const double LeastSlot = 14;
    private const double LeastBand = 1.2;
    private const double WidestReturn = 6;
    private const double LeastBox = 22;
    private const double LineOfBox = 12;
    private const double Gap = 18;

    private readonly List<FlowNode> _nodes = [];
    private readonly List<FlowBand> _bands = [];

    private FlowLayout()
    {
    }

    public IReadOnlyList<FlowNode> Nodes => _nodes;

    public IReadOnlyList<FlowBand> Bands => _bands;

    public int Columns { get; private set; }

    public double Bottom { get; private set; }

    public static FlowLayout Of(PlantLedger ledger, double top)
    {
        FlowLayout layout = new();
        layout.Gather(ledger);
        layout.PutInColumns();
        layout.Measure();
        layout.PutInRows(top);
        return layout;
    }

    private void Gather(PlantLedger ledger)
    {
        foreach (IGrouping<(string From, string To), LineLedger> lines in ledger.Lines.Where(line => line.Litres > Least).GroupBy(line => (line.From, line.To)))
        {
            LineLedger first = lines.First();
            double litres = lines.Sum(line => line.Litres);
            Join(Node(first.From, first.FromEnd, ledger), Node(first.To, first.ToEnd, ledger), $"{string.Join(", ", lines.Select(line => line.Name))} {DoseWords.Litres(litres)}{Dry(lines.Sum(line => line.SolidKilograms))}", litres);
        }

        foreach (CakeLedger cake in ledger.Cakes.Where(cake => cake.FiltrateLitres > Least))
        {
            Join(Node(cake.Tank, FlowEnd.Tank, ledger), Node(cake.FiltrateTo, FlowEnd.Tank, ledger), $"filtrate of {cake.Filter} {DoseWords.Litres(cake.FiltrateLitres)}", cake.FiltrateLitres);
            Join(Node(cake.Tank, FlowEnd.Tank, ledger), Node(cake.TakenBy, FlowEnd.Outside, ledger), Cake(cake), cake.WetKilograms);
        }

        foreach (TankLedger tank in ledger.Tanks.Where(tank => tank.OverflowedLitres > Least))
        {
            Join(Node(tank.Name, FlowEnd.Tank, ledger), Node("over the rim", FlowEnd.Outside, ledger), $"{tank.Name} {DoseWords.Litres(tank.OverflowedLitres)}", tank.OverflowedLitres);
        }
    }

    /// <summary>What comes from outside and what goes there may share a name, and are two places.</summary>
    private FlowNode Node(string name, FlowEnd kind, PlantLedger ledger)
    {
        FlowNode? known = _nodes.Find(node => node.Name == name && node.Kind == kind);
        if (known is null)
        {
            TankLedger? tank = kind == FlowEnd.Tank ? ledger.Tanks.First(tank => tank.Name == name) : null;
            known = new FlowNode(name, kind, tank is null ? [] : [.. Remarks(tank), .. ledger.Cakes.Where(cake => cake.Tank == name && cake.HeldLitres + cake.StartHeldLitres > Least).SelectMany(Remarks)]);
            _nodes.Add(known);
        }

        return known;
    }

    private static string[] Remarks(TankLedger tank) => Remarks("holds", tank.StartLitres, tank.Litres, tank.StartSolidKilograms, tank.SolidKilograms);

    /// <summary>What is on a filter stands in the box of the tank that it draws from: what that tank gave and it kept.</summary>
    private static string[] Remarks(CakeLedger cake) => Remarks($"on {cake.Filter}", cake.StartHeldLitres, cake.HeldLitres, cake.StartHeldKilograms, cake.HeldKilograms);

    private static string[] Remarks(string where, double startLitres, double litres, double startKilograms, double kilograms)
    {
        string water = $"{where} {DoseWords.Litres(litres)}, {Change(litres - startLitres)}";
        double more = kilograms - startKilograms;
        return WeightWords.IsSome(kilograms) || WeightWords.IsSome(more)
            ? [water, $"{WeightWords.Of(kilograms)} dry, {(more < 0 ? "-" : "+")}{WeightWords.Of(Math.Abs(more))}"]
            : [water];
    }

    private static string Cake(CakeLedger cake) => $"{WeightWords.Of(cake.WetKilograms)} wet, {WeightWords.Of(cake.FilterAidKilograms + cake.SolidsKilograms)} dry";

    private static string Dry(double kilograms) => WeightWords.IsSome(kilograms) ? $", {WeightWords.Of(kilograms)} dry" : "";

    private static string Change(double litres) => Math.Abs(litres) < Least ? "as before" : $"{(litres > 0 ? "+" : "-")}{DoseWords.Litres(Math.Abs(litres))}";

    private void Join(FlowNode from, FlowNode to, string words, double litres)
    {
        FlowBand band = new(from, to, words, litres);
        _bands.Add(band);
        from.Out.Add(band);
        to.In.Add(band);
    }

    /// <summary>A band that closes a ring, seen from the sources, is a return; then each box stands behind all that feed it.</summary>
    private void PutInColumns()
    {
        HashSet<FlowNode> done = [];
        HashSet<FlowNode> open = [];
        foreach (FlowNode node in _nodes.OrderBy(node => node.In.Count))
        {
            Visit(node);
        }

        bool moved = true;
        while (moved)
        {
            moved = false;
            foreach (FlowBand band in _bands.Where(band => !band.IsReturn && band.To.Column <= band.From.Column))
            {
                band.To.Column = band.From.Column + 1;
                moved = true;
            }
        }

        Columns = _nodes.Select(node => node.Column).DefaultIfEmpty(0).Max() + 1;
        foreach (FlowNode node in _nodes.Where(node => node.In.Count == 0 && node.Out.Count > 0))
        {
            node.Column = Math.Max(0, node.Out.Min(band => band.To.Column) - 1);
        }

        void Visit(FlowNode node)
        {
            if (!done.Add(node))
            {
                return;
            }

            open.Add(node);
            foreach (FlowBand band in node.Out)
            {
                band.IsReturn = open.Contains(band.To);
                Visit(band.To);
            }

            open.Remove(node);
        }
    }

    private void Measure()
    {
        double largest = _nodes.Select(node => Math.Max(node.In.Sum(band => band.Litres), node.Out.Sum(band => band.Litres))).DefaultIfEmpty(1).Max();
        double crowded = _nodes.GroupBy(node => node.Column).Select(column => column.Sum(node => Math.Max(node.In.Sum(band => band.Litres), node.Out.Sum(band => band.Litres)))).DefaultIfEmpty(1).Max();
        double scale = TallestColumn / Math.Max(2 * largest, crowded);
        foreach (FlowBand band in _bands)
        {
            band.Width = Math.Clamp(band.Litres * scale, LeastBand, band.IsReturn ? WidestReturn : double.PositiveInfinity);
            band.Slot = Math.Max(LeastSlot, band.Width + 2);
        }

        foreach (FlowNode node in _nodes)
        {
            node.Height = Math.Max(LeastBox + (LineOfBox * node.Remarks.Length), Math.Max(node.In.Sum(band => band.Slot), node.Out.Sum(band => band.Slot)));
        }
    }

    /// <summary>Boxes of a column in the order of what feeds them; bands leave and arrive in the order of their other ends.</summary>
    private void PutInRows(double top)
    {
        Bottom = top;
        foreach (IGrouping<int, FlowNode> column in _nodes.GroupBy(node => node.Column).OrderBy(column => column.Key))
        {
            double y = top;
            foreach (FlowNode node in column.OrderBy(node => node.In.Where(band => !band.IsReturn).Select(band => band.From.Top).DefaultIfEmpty(double.MaxValue).Average()).ThenBy(node => node.Name, StringComparer.Ordinal))
            {
                node.Top = y;
                y += node.Height + Gap;
            }

            Bottom = Math.Max(Bottom, y);
        }

        foreach (FlowNode node in _nodes)
        {
            double y = node.Top;
            foreach (FlowBand band in node.Out.OrderBy(band => band.To.Top))
            {
                band.FromY = y + (band.Slot / 2);
                y += band.Slot;
            }

            y = node.Top;
            foreach (FlowBand band in node.In.OrderBy(band => band.From.Top))
            {
                band.ToY = y + (band.Slot / 2);
                y += band.Slot;
            }
        }
    }
}
