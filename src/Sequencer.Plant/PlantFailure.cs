namespace Sequencer.Plant;

/// <summary>
/// The model left what is physical, or an equation could not be solved: the run has no meaning from
/// here on. Names the equation, the place (a tag) and the time.
/// </summary>
public sealed record PlantFailure(string Equation, string Place, double TimeSeconds, string Explanation)
{
    public override string ToString() =>
        FormattableString.Invariant($"{Place}: {Equation}: {Explanation} (at {TimeSeconds:F1} s)");
}
