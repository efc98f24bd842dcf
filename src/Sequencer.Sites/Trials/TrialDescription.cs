using System.Collections.Immutable;
using Sequencer.Plant.Yaml;
using Sequencer.Text;

namespace Sequencer.Sites.Trials;

/// <summary>What a site says of its trials (spec/trials.md), as it is written.</summary>
public sealed record TrialDescription(SourceText Text)
{
    /// <summary>What a run without a word on recipes is played with: the programs' defaults, or the scenario's own.</summary>
    public const string ScenariosOwn = "as scenario";

    /// <summary>Long enough for a tank to run over that a stuck valve goes on filling, in most plants.</summary>
    public const double UsualAfterRestSeconds = 3600;

    /// <summary>Played in turn; empty for the first one of the site.</summary>
    public ImmutableArray<Placed<string>> Scenarios { get; init; } = [];

    /// <summary>The longest a run may be, in place of the scenario's own; null for that one.</summary>
    public double? LastsSeconds { get; init; }

    /// <summary>A run ends when the unit that it waits for has been held, stopped or aborted for so long.</summary>
    public double AfterRestSeconds { get; init; } = UsualAfterRestSeconds;

    public ImmutableArray<Placed<string>> Recipes { get; init; } = [];

    public ImmutableArray<ToleranceText> Tolerances { get; init; } = [];

    public ImmutableArray<OperatorSpread> Operator { get; init; } = [];

    public ImmutableArray<OutcomeText> Outcomes { get; init; } = [];

    /// <summary>Faults that are not injected, each with the reason that reports give.</summary>
    public ImmutableArray<(Placed<string> Fault, string Reason)> LeftOut { get; init; } = [];
}
