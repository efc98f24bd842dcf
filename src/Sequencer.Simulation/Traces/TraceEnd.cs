using Sequencer.Control.TransitionSystems;
using Sequencer.Text;

namespace Sequencer.Simulation.Traces;

/// <summary>What the last scan of a run is the first to do: break a requirement, or reach something.</summary>
/// <param name="Name">Of the requirement, or of what is reached.</param>
/// <param name="Title">What a person calls it.</param>
/// <param name="Statement">The author's words; the names in them are shown.</param>
/// <param name="Holds">False in the last scan, true in those before.</param>
/// <param name="Origin">Where it is written.</param>
/// <param name="IsReached">Something wanted is reached; else a requirement is broken.</param>
public sealed record TraceEnd(string Name, string Title, string Statement, Expression Holds, Origin Origin, bool IsReached)
{
    public static TraceEnd Broken(Requirement requirement) =>
        new(requirement.Name, requirement.Title, requirement.Statement, requirement.Holds, requirement.Origin, false);

    public string Word => IsReached ? "reached" : "broken";
}
