using System.Globalization;
using Sequencer.Sites.Stages;

namespace Sequencer.Sites.Proposing;

/// <summary>What was tried for one requirement.</summary>
internal sealed class Tried(IProgress<StageProgress> progress, string requirement)
{
    /// <summary>Additions that check, and were run.</summary>
    public int Systems { get; private set; }

    /// <summary>Those that no known run breaks, and were given to the prover.</summary>
    public int Proofs { get; set; }

    /// <summary>Those that the prover left undecided.</summary>
    public int Undecided { get; set; }

    /// <summary>Those that mend the requirement and spoil something else, and what.</summary>
    public List<(string Words, string Objection)> Refused { get; } = [];

    /// <summary>The budget was spent before all were tried.</summary>
    public bool IsCutShort { get; set; }

    public void CountSystem()
    {
        Systems++;
        progress.Report(new StageProgress("mends", string.Create(CultureInfo.InvariantCulture, $"{requirement}: {Systems} additions tried, {Proofs} given to the prover")));
    }
}
