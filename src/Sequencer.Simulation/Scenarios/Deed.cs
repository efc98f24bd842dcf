namespace Sequencer.Simulation.Scenarios;

/// <summary>What an operator does, or what happens to the plant.</summary>
public abstract record Deed
{
    private Deed()
    {
    }

    /// <summary>Presses a push button (a Boolean input of the operator's, as <c>R101.start</c>) and lets go.</summary>
    public sealed record Press(string Input) : Deed;

    /// <summary>Gives an operator's input a value that stays: a parameter's setting, an answer, a switch (1 or 0).</summary>
    public sealed record Set(string Input, Measure Value) : Deed;

    /// <summary>Answers a prompt (as <c>R101.Q1</c>) in the words of one of its answers.</summary>
    public sealed record Answer(string Prompt, string Words) : Deed;

    /// <summary>Takes an output into manual, or back.</summary>
    public sealed record Manual(string Output, ManualMode Mode) : Deed;

    /// <summary>Puts a named fault into the plant.</summary>
    public sealed record Inject(string Fault) : Deed;

    /// <summary>Takes a named fault away.</summary>
    public sealed record Clear(string Fault) : Deed;

    /// <summary>Loses the power of controller and plant for a time.</summary>
    public sealed record LosePower(double Seconds) : Deed;
}
