using System.Collections.Immutable;
using Sequencer.Language.Programs;
using Sequencer.Language.Rules.Analysis;

namespace Sequencer.Language.Rules;

/// <summary>A checked program and what several rules need to know of it, worked out once.</summary>
internal sealed class ProgramFacts
{
    private readonly Lazy<StepGraph> _graph;
    private readonly Lazy<ImmutableArray<bool>> _wayTo;
    private readonly Lazy<Situations> _situations;
    private readonly Lazy<ImmutableArray<ConditionPlace>> _conditions;
    private readonly Lazy<OutputUse> _outputs;

    public ProgramFacts(UnitProgram program)
    {
        Program = program;
        _graph = new Lazy<StepGraph>(() => StepGraph.Of(program));
        _wayTo = new Lazy<ImmutableArray<bool>>(() => Graph.WithWayFromStart());
        _situations = new Lazy<Situations>(() => Situations.Explore(Graph));
        _conditions = new Lazy<ImmutableArray<ConditionPlace>>(() => [.. ConditionPlace.All(program)]);
        _outputs = new Lazy<OutputUse>(() => OutputUse.Of(program));
    }

    public UnitProgram Program { get; }

    public StepGraph Graph => _graph.Value;

    public Situations Situations => _situations.Value;

    /// <summary>Every condition of the program, each once, as it is written.</summary>
    public ImmutableArray<ConditionPlace> Conditions => _conditions.Value;

    /// <summary>The step can be come to from the first one of its section if a join needs its steps one at a time only.</summary>
    public bool HasWayTo(int step) => _wayTo.Value[step];

    public OutputUse Outputs => _outputs.Value;
}
