using Sequencer.Plant;
using Sequencer.Simulation.Words;

namespace Sequencer.Simulation.Scenarios;

/// <summary>Deeds in a few words, for records, pictures and reports.</summary>
public static class ActionWords
{
    public static string Of(Deed deed, IEnumerable<NamedFault> faults) => deed switch
    {
        Deed.Press press => $"press {press.Input}",
        Deed.Set set => $"set {set.Input} to {set.Value}",
        Deed.Answer answer => $"answer {answer.Prompt}: {answer.Words}",
        Deed.Manual manual => $"{manual.Output} {Of(manual.Mode)}",
        Deed.Inject inject => HandSwitch(inject.Fault, faults) is { } tag ? $"operate {tag}" : $"fault {inject.Fault}",
        Deed.Clear clear => HandSwitch(clear.Fault, faults) is { } tag ? $"let go of {tag}" : $"end of fault {clear.Fault}",
        Deed.LosePower lose => $"power lost for {DurationWords.Of(lose.Seconds)}",
        _ => throw new System.Diagnostics.UnreachableException($"no words for {deed}"),
    };

    /// <summary>The tag of the switch that a hand moves.</summary>
    private static string? HandSwitch(string fault, IEnumerable<NamedFault> faults) =>
        faults.FirstOrDefault(named => named.Kind == FaultKind.Hand && named.Name == fault)?.Piece;

    private static string Of(ManualMode mode) => mode switch
    {
        ManualMode.On => "manual on",
        ManualMode.Off => "manual off",
        _ => "automatic",
    };
}
