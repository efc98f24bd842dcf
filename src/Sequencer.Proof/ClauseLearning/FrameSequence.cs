using Sequencer.Proof.Satisfiability;

namespace Sequencer.Proof.ClauseLearning;

/// <summary>
/// Frame k over-approximates the states reached in at most k scans: it is the conjunction of the clauses
/// learnt at k and at every later frame. Frame 0 is the initial state.
/// </summary>
internal sealed class FrameSequence
{
    private readonly List<List<Cube>> _blocked = [[], []];

    /// <summary>The last frame.</summary>
    public int Last => _blocked.Count - 1;

    public IEnumerable<(Cube Cube, int Frame)> All =>
        _blocked.SelectMany((cubes, frame) => cubes.Select(cube => (cube, frame)));

    public int Clauses => _blocked.Sum(cubes => cubes.Count);

    public void Extend() => _blocked.Add([]);

    public bool Blocks(Cube cube, int frame) => _blocked.Skip(frame).Any(cubes => cubes.Exists(blocked => blocked.Covers(cube)));

    public void Add(Cube cube, int frame, StepQueries queries)
    {
        for (int lower = 1; lower <= frame; lower++)
        {
            _blocked[lower].RemoveAll(cube.Covers);
        }

        _blocked[frame].Add(cube);
        queries.AddBlocked(cube, frame);
    }

    /// <summary>
    /// Moves every clause as far up as it holds. A frame that is then empty equals the next one:
    /// its clauses and those above are an inductive invariant, which is returned.
    /// </summary>
    public IReadOnlyList<Cube>? Push(StepQueries queries)
    {
        for (int frame = 1; frame < Last; frame++)
        {
            foreach (Cube cube in _blocked[frame].ToArray())
            {
                if (_blocked[frame].Contains(cube) && !queries.CanEnter(cube, frame, out Literal[] _))
                {
                    Add(cube, frame + 1, queries);
                }
            }

            if (_blocked[frame].Count == 0)
            {
                return [.. _blocked.Skip(frame + 1).SelectMany(cubes => cubes)];
            }
        }

        return null;
    }
}
