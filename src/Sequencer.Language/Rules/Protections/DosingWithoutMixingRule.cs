using System.Collections.Immutable;
using Sequencer.Language.Programs;
using Sequencer.Language.Rules.Analysis;

namespace Sequencer.Language.Rules.Protections;

/// <summary>Where the unit has an agitator (by the letters AG) that is confirmed: an output that doses a chemical, is interlocked, and could dose with each agitator stopped, or with each not proved.</summary>
internal sealed class DosingWithoutMixingRule : IProgramRule
{
    public void Check(UnitProgram program, RuleContext context)
    {
        ImmutableArray<Output> agitators = [.. program.Outputs.Where(output => output.Confirmation is not null && TagLetters.IsAgitator(output.Tag))];
        if (agitators.IsEmpty)
        {
            return;
        }

        foreach (Output output in program.Outputs.Where(output => OutputUse.DosesChemical(output, program.Reagents)))
        {
            List<Interlock> guards = [.. program.Interlocks.Where(interlock => interlock.Outputs.Any(blocked => blocked.Tag == output.Tag))];
            if (guards.Count > 0 && !agitators.Any(agitator => guards.Exists(guard => Proves(guard, agitator))))
            {
                context.Report(ProtectionDiagnostics.DosingWithoutMixing(output, Wording.List(agitators, agitator => agitator.Tag)));
            }
        }
    }

    private static bool Proves(Interlock guard, Output agitator) => guard.Form != InterlockForm.FromUntil
        ? ConditionTree.Facts(guard.Condition, guard.Form == InterlockForm.Unless).Any(signed => signed.Positive && Shows(signed.Fact, agitator))
        : ConditionTree.Facts(guard.Condition, false).Any(signed => signed.Positive && Shows(signed.Fact, agitator));

    private static bool Shows(Condition fact, Output agitator) => fact switch
    {
        SwitchFact shown => shown.Input.Tag == agitator.Confirmation?.On.Tag,
        OutputFact { Kind: OutputFactKind.Proved } proved => proved.Output.Tag == agitator.Tag,
        _ => false,
    };
}
