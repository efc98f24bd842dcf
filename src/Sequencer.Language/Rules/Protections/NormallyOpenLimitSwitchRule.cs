using Sequencer.Language.Programs;
using Sequencer.Language.Rules.Analysis;

namespace Sequencer.Language.Rules.Protections;

/// <summary>A switch for a limit or an emergency, by the letters of its tag (ISA-5.1: any variable, S, then H, HH, L or LL; ES an emergency stop), that is not normally closed.</summary>
internal sealed class NormallyOpenLimitSwitchRule : IProgramRule
{
    public void Check(UnitProgram program, RuleContext context)
    {
        foreach (SwitchInput input in program.SwitchInputs)
        {
            if (!input.NormallyClosed && (TagLetters.IsLimitSwitch(input.Tag) || TagLetters.IsEmergencyStop(input.Tag)))
            {
                context.Report(SignalDiagnostics.NormallyOpenLimitSwitch(input));
            }
        }
    }
}
