using System.Collections.Immutable;
using Sequencer.Plant.Yaml;
using Sequencer.Text;

namespace Sequencer.Plant.Description;

/// <summary>
/// A pipe. Its flow is the rate times the least opened of the drives it goes through: a constant
/// rate (a pump's, or of a gravity inlet), or that of a free outlet under the level above it.
/// </summary>
/// <param name="Name">its name</param>
/// <param name="From">a supply, a reagent or a tank</param>
/// <param name="To">a tank, or any other word for a place outside the model</param>
/// <param name="RateLitresPerSecond">flow with everything open, also of a powder by its feeder; 0 where <paramref name="Outlet"/> or <paramref name="Pumped"/> tells</param>
/// <param name="Outlet">a free outlet; null for a constant rate</param>
/// <param name="Pumped">a pump and its pipe; null where another tells</param>
/// <param name="Through">tags of pumps, feeders and valves, all of which must run or be open</param>
/// <param name="NotThrough">tags of valves, all of which must stand closed: the other way of a three-way valve</param>
/// <param name="DosingLine">the dosing line that it goes through; null for none</param>
/// <param name="Draws">where in a tank it draws</param>
/// <param name="ByLevel">a control of its own by what its tank holds; null for none</param>
/// <param name="KeepsHighest">of what passes it the highest values are kept: <c>flow</c>, what passed <c>in_a_day</c>, <c>temperature</c> or contents</param>
/// <param name="Span">where it is described</param>
public sealed record LineDescription(
    string Name,
    string From,
    string To,
    double RateLitresPerSecond,
    OutletDescription? Outlet,
    PumpedDescription? Pumped,
    ImmutableArray<string> Through,
    ImmutableArray<string> NotThrough,
    string? DosingLine,
    DrawPoint Draws,
    LevelControlDescription? ByLevel,
    ImmutableArray<Placed<string>> KeepsHighest,
    SourceSpan Span)
{
    /// <summary>What can be kept of any line.</summary>
    public const string Flow = "flow";

    /// <summary>What passes in any 24 h; can be kept of any line.</summary>
    public const string InADay = "in_a_day";

    /// <summary>What can be kept of any line that draws from a tank.</summary>
    public const string Temperature = "temperature";
}
