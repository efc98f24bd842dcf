using Sequencer.Control.TransitionSystems;
using Sequencer.Language.Programs;

namespace Sequencer.Lowering;

/// <summary>All prompts of the unit.</summary>
internal sealed class Prompts
{
    private readonly UnitScan _scan;
    private readonly List<Prompt> _prompts = [];

    public Prompts(UnitScan scan)
    {
        _scan = scan;
        foreach (Step step in scan.Unit.Steps)
        {
            _prompts.AddRange(step.Actions.OfType<PromptAction>().Select(action => new Prompt(scan, step, action)));
        }
    }

    public Expression Answered(AnsweredFact fact) => _prompts.First(prompt => prompt.Name == fact.Prompt).Answered(fact.Answer);

    public Expression Ask(Reaction reaction) => _scan.Build.Or(_prompts.Select(prompt => prompt.Ask(reaction)));

    public void Evolve() => _prompts.ForEach(prompt => prompt.Evolve());
}
