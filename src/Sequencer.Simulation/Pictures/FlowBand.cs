namespace Sequencer.Simulation.Pictures;

/// <summary>What went from one place to another in a run.</summary>
internal sealed class FlowBand(FlowNode from, FlowNode to, string words, double litres)
{
    public FlowNode From { get; } = from;

    public FlowNode To { get; } = to;

    public string Words { get; } = words;

    public double Litres { get; } = litres;

    /// <summary>It leads back to an earlier column.</summary>
    public bool IsReturn { get; set; }

    /// <summary>Pixels it is wide.</summary>
    public double Width { get; set; }

    /// <summary>Pixels that it takes of a box's side: room for its words too.</summary>
    public double Slot { get; set; }

    /// <summary>Middle of its ends.</summary>
    public double FromY { get; set; }

    public double ToY { get; set; }
}
