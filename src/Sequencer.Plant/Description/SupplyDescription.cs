using System.Collections.Immutable;
using Sequencer.Text;

namespace Sequencer.Plant.Description;

/// <summary>
/// A water that comes from outside in any amount. Its pH is given; the amount of
/// <paramref name="BalancedBy"/> is changed until the water has that pH. One that is <paramref name="ToTreat"/> is what the plant is there for; others serve it.
/// </summary>
public sealed record SupplyDescription(
    string Name,
    double Celsius,
    double Ph,
    Substance BalancedBy,
    ImmutableArray<Amount> Dissolved,
    double SuspendedGramsPerLitre,
    bool ToTreat,
    SourceSpan Span);
