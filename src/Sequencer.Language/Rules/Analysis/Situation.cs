using System.Collections.Immutable;

namespace Sequencer.Language.Rules.Analysis;

/// <summary>The steps active at one time (IEC 60848, situation), by their places in order.</summary>
internal readonly struct Situation : IEquatable<Situation>
{
    private readonly int _hash;

    public Situation(ImmutableArray<int> active)
    {
        Active = active;
        HashCode hash = default;
        foreach (int step in active)
        {
            hash.Add(step);
        }

        _hash = hash.ToHashCode();
    }

    public ImmutableArray<int> Active { get; }

    public bool Enables(StepWay way) => way.From.All(Contains);

    public bool Contains(int step) => Active.BinarySearch(step) >= 0;

    public Situation After(StepWay way)
    {
        SortedSet<int> next = [.. Active];
        next.ExceptWith(way.From);
        next.UnionWith(way.To);
        return new Situation([.. next]);
    }

    public bool Equals(Situation other) => _hash == other._hash && Active.AsSpan().SequenceEqual(other.Active.AsSpan());

    public override bool Equals(object? obj) => obj is Situation other && Equals(other);

    public override int GetHashCode() => _hash;
}
