using Sequencer.Plant.Ledger;

namespace Sequencer.Simulation.Pictures;

/// <summary>A place that water comes from, stays in or goes to.</summary>
internal sealed class FlowNode(string name, FlowEnd kind, string[] remarks)
{
    public string Name { get; } = name;

    public FlowEnd Kind { get; } = kind;

    /// <summary>The lines of its box below the name.</summary>
    public string[] Remarks { get; } = remarks;

    public List<FlowBand> In { get; } = [];

    public List<FlowBand> Out { get; } = [];

    /// <summary>From the left, from 0.</summary>
    public int Column { get; set; }

    public double Top { get; set; }

    public double Height { get; set; }
}
