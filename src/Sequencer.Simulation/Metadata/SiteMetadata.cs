using System.Collections.Immutable;

namespace Sequencer.Simulation.Metadata;

/// <summary>
/// What the simulation must know of a site beyond its transition system, to bind, show and judge:
/// filled from the checked programs. <see cref="MeaningHash"/> is the hash of the programs' meaning.
/// </summary>
public sealed record SiteMetadata(string Name, string MeaningHash)
{
    private readonly Dictionary<string, SignalMetadata> _byTag = new(StringComparer.Ordinal);
    private readonly ImmutableArray<SignalMetadata> _signals = [];

    public ImmutableArray<SignalMetadata> Signals
    {
        get => _signals;
        init
        {
            _signals = value;
            _byTag = value.ToDictionary(signal => signal.Tag, StringComparer.Ordinal);
        }
    }

    public ImmutableArray<StepMetadata> Steps { get; init; } = [];

    public ImmutableArray<PromptMetadata> Prompts { get; init; } = [];

    public ImmutableArray<RecordMetadata> Records { get; init; } = [];

    public ImmutableArray<ReagentMetadata> Reagents { get; init; } = [];

    public ImmutableArray<RealMetadata> Reals { get; init; } = [];

    public ImmutableArray<DischargeLimit> DischargeLimits { get; init; } = [];

    public ImmutableArray<TrendMark> Marks { get; init; } = [];

    /// <summary>Inputs that take a value in place of a reading, each with the description of that reading.</summary>
    public ImmutableDictionary<string, SignalMetadata> PutValues { get; init; } = ImmutableDictionary<string, SignalMetadata>.Empty;

    /// <summary>Converts between the units of the site's language; knows nothing until it is given.</summary>
    public UnitConversion Convert { get; init; } = static (value, from, to) => string.Equals(from, to, StringComparison.Ordinal) ? value : null;

    /// <summary>
    /// The description of a variable; a parameter's setting and its copy for the batch share the
    /// parameter's.
    /// </summary>
    public SignalMetadata? Signal(string variable)
    {
        if (_byTag.TryGetValue(variable, out SignalMetadata? signal))
        {
            return signal;
        }

        if (PutValues.TryGetValue(variable, out SignalMetadata? put))
        {
            return put;
        }

        foreach (string suffix in (ReadOnlySpan<string>)[".setting", ".batch"])
        {
            if (variable.EndsWith(suffix, StringComparison.Ordinal))
            {
                return _byTag.GetValueOrDefault(variable[..^suffix.Length]);
            }
        }

        return null;
    }

    public StepMetadata? Step(string unit, string step) =>
        Steps.FirstOrDefault(candidate => string.Equals(candidate.Unit, unit, StringComparison.Ordinal)
            && string.Equals(candidate.Step, step, StringComparison.Ordinal));
}
