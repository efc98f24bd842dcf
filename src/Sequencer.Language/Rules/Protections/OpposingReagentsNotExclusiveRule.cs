using System.Collections.Immutable;
using Sequencer.Language.Programs;
using Sequencer.Language.Rules.Analysis;

namespace Sequencer.Language.Rules.Protections;

/// <summary>Two outputs that deliver reagents of which one opposes the other, without an exclusion and without an interlock of one on the other.</summary>
internal sealed class OpposingReagentsNotExclusiveRule : IProgramRule
{
    public void Check(UnitProgram program, RuleContext context)
    {
        ImmutableArray<Output> dosing = [.. program.Outputs.Where(output => output.Delivery is not null)];
        for (int second = 1; second < dosing.Length; second++)
        {
            for (int first = 0; first < second; first++)
            {
                if (Oppose(dosing[first], dosing[second]) && !AreKeptApart(dosing[first], dosing[second], program))
                {
                    context.Report(ProtectionDiagnostics.OpposingReagentsNotExclusive(dosing[first], dosing[second]));
                }
            }
        }
    }

    private static bool Oppose(Output first, Output second) =>
        first.Delivery is { Reagent: var one } && second.Delivery is { Reagent: var other }
        && (one.Opposes.Contains(other.Name) || other.Opposes.Contains(one.Name));

    private static bool AreKeptApart(Output first, Output second, UnitProgram program) =>
        program.Exclusions.Any(exclusion => Names(exclusion.Outputs, first) && Names(exclusion.Outputs, second))
        || program.Interlocks.Any(interlock => (Names(interlock.Outputs, first) && Blocks(interlock, second)) || (Names(interlock.Outputs, second) && Blocks(interlock, first)));

    private static bool Names(ImmutableArray<Output> outputs, Output sought) => outputs.Any(output => output.Tag == sought.Tag);

    private static bool Blocks(Interlock interlock, Output other) => ConditionTree.Facts(interlock.Condition, interlock.Form != InterlockForm.Unless)
        .Any(signed => signed is { Positive: true, Fact: OutputFact { Kind: OutputFactKind.On } fact } && fact.Output.Tag == other.Tag);
}
