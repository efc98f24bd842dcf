using System.Collections.Immutable;

namespace Sequencer.Language.Rules.Analysis;

/// <summary>The strongly connected steps of a graph, by R. Tarjan, SIAM Journal on Computing 1 (1972) 146, without recursion.</summary>
internal sealed class StepCircles
{
    private readonly StepGraph _graph;
    private readonly int[] _index;
    private readonly int[] _low;
    private readonly bool[] _pending;
    private readonly Stack<int> _stack = [];
    private readonly List<ImmutableArray<int>> _circles = [];
    private int _next = 1;

    private StepCircles(StepGraph graph)
    {
        _graph = graph;
        _index = new int[graph.Steps.Length];
        _low = new int[graph.Steps.Length];
        _pending = new bool[graph.Steps.Length];
    }

    public static ImmutableArray<ImmutableArray<int>> Of(StepGraph graph)
    {
        StepCircles circles = new(graph);
        for (int step = 0; step < graph.Steps.Length; step++)
        {
            if (circles._index[step] == 0)
            {
                circles.Visit(step);
            }
        }

        return [.. circles._circles.OrderBy(circle => circle[0])];
    }

    private void Visit(int root)
    {
        Stack<(int Step, IEnumerator<int> Targets)> path = [];
        path.Push(Enter(root));
        while (path.TryPeek(out (int Step, IEnumerator<int> Targets) top))
        {
            if (top.Targets.MoveNext())
            {
                int target = top.Targets.Current;
                if (_index[target] == 0)
                {
                    path.Push(Enter(target));
                }
                else if (_pending[target])
                {
                    _low[top.Step] = Math.Min(_low[top.Step], _index[target]);
                }

                continue;
            }

            path.Pop();
            top.Targets.Dispose();
            if (path.TryPeek(out (int Step, IEnumerator<int> Targets) above))
            {
                _low[above.Step] = Math.Min(_low[above.Step], _low[top.Step]);
            }

            Close(top.Step);
        }
    }

    private (int Step, IEnumerator<int> Targets) Enter(int step)
    {
        _index[step] = _low[step] = _next++;
        _pending[step] = true;
        _stack.Push(step);
        return (step, Targets(step).GetEnumerator());
    }

    private IEnumerable<int> Targets(int step) => _graph.Leaving[step].SelectMany(way => _graph.Ways[way].To);

    private void Close(int step)
    {
        if (_low[step] != _index[step])
        {
            return;
        }

        List<int> members = [];
        int member;
        do
        {
            member = _stack.Pop();
            _pending[member] = false;
            members.Add(member);
        }
        while (member != step);

        if (members.Count > 1 || Targets(step).Contains(step))
        {
            _circles.Add([.. members.Order()]);
        }
    }
}
