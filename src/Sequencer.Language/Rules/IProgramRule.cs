using Sequencer.Language.Programs;

namespace Sequencer.Language.Rules;

/// <summary>
/// One thing that the checker looks for in a program whose names and units are sound already.
/// A rule keeps nothing between programs.
/// </summary>
internal interface IProgramRule
{
    void Check(UnitProgram program, RuleContext context);
}
