using Sequencer.Language.Programs;
using Sequencer.Language.Rules.Analysis;
using Sequencer.Text;

namespace Sequencer.Language.Rules;

/// <summary>Where the declarations of devices, limits and switches do not fit each other: codes and wording (SEQ0560 to SEQ0563).</summary>
internal static class EquipmentDiagnostics
{
    public static Diagnostic PowerLossOpens(Output output, string protection) => new(
        "SEQ0560",
        Severity.Warning,
        WrittenWords.Name(output.Span, output.Tag),
        $"`{output.Tag}` is {(output.Kind == OutputKind.Valve ? "open" : "running")} without power, and `{protection}` is there to keep it {(output.Kind == OutputKind.Valve ? "closed" : "stopped")}",
        "a blown fuse, a pulled plug or a loss of air does what the protection forbids, and no program can undo it",
        "choose the actuator so that it goes to the safe side without power");

    public static Diagnostic BlockTooLate(Condition limit, Interlock interlock, Output output, string rise) => new(
        "SEQ0561",
        Severity.Warning,
        limit.Span,
        $"while `{output.Tag}` closes, in up to {Wording.Time(output.Confirmation!.Within)}, the reading can rise by {rise}, past the end of its range",
        $"`{interlock.Name}` acts too late for the rate that the program assumes: the tank is fuller than anyone can read",
        "let the interlock act earlier, by what comes in while the device moves");

    public static Diagnostic LimitBeforeGoal(SourceSpan limit, string name, string acts, Step step, SourceSpan goal) => new(
        "SEQ0562",
        Severity.Warning,
        limit,
        $"`{name}` {acts} before step {step.Number} reaches what it waits for",
        "limits out of order: it comes in every ordinary batch, so the batch is stopped by it or its message is soon ignored",
        "put the limit beyond what the step waits for, or the step's goal before it")
    {
        Notes = [new RelatedNote(goal, $"what step {step.Number} waits for")],
    };

    public static Diagnostic SwitchWithoutDiscrepancy(Output output, SwitchInput shown) => new(
        "SEQ0563",
        Severity.Warning,
        WrittenWords.Name(output.Span, output.Tag),
        $"`{shown.Tag}` shows what `{output.Tag}` does, and nothing compares the two",
        "a stuck valve or a tripped motor stays unseen: the program goes on as if the device had obeyed",
        $"add `confirm {shown.Tag} within …` (common practice, no source: 1.5 times the stroke or start time)");
}
