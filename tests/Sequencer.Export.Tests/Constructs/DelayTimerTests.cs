using Sequencer.Control.Execution;
using Sequencer.Control.TransitionSystems;
using Sequencer.StructuredText;
using Sequencer.Text;

namespace Sequencer.Export.Tests.Constructs;

/// <summary>
/// The delays of a protection are the on-delay and off-delay timers of the trade: TON and TOF of
/// IEC 61131-3, 2.5.2.3.4 (timers, from memory), as the reader of structured text gives them.
/// </summary>
public sealed class DelayTimerTests
{
    private const int Scans = 4000;

    private const string Timers = """
        PROGRAM Main
        VAR_INPUT Fact : BOOL; END_VAR
        VAR_OUTPUT Delayed : BOOL; END_VAR
        VAR rise : TON; fall : TOF; END_VAR
        rise(IN := Fact, PT := T#300ms);
        fall(IN := rise.Q, PT := T#700ms);
        Delayed := fall.Q;
        END_PROGRAM
        """;

    [Fact]
    public void On_and_off_delay_are_TON_and_TOF()
    {
        TransitionSystem text = StructuredTextReader.Read(new SourceText("timers.st", Timers), new ReadingOptions(ScanMilliseconds: 100)).System
            ?? throw new InvalidOperationException("the timers cannot be read");
        TransitionSystem program = ConstructExport.Of("interlock I1 \"Block\" M1 blocked while S2, on after 0.3 s, off after 0.7 s").System;
        Interpreter timers = new(text, []);
        Interpreter protection = new(program, [program.Definitions.Single(definition => definition.Name == "I1.blocks").Value]);
        int contact = program.Inputs.Single(input => input.Name == "S2.contact").Index;
        int input = text.Inputs.Single(input => input.Name == "Fact").Index;
        Random random = new(61131);
        bool fact = false;
        int on = 0;
        for (int scan = 0; scan < Scans; scan++)
        {
            fact ^= random.Next(4) == 0;
            timers.Inputs[input] = protection.Inputs[contact] = fact ? 1 : 0;
            timers.Step();
            protection.Step();
            Assert.True(timers.Outputs[0] == protection.Observed[0], $"scan {scan}");
            on += (int)timers.Outputs[0];
        }

        Assert.InRange(on, Scans / 10, Scans * 9 / 10);
    }
}
