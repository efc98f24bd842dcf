using Sequencer.Control.TransitionSystems;
using Sequencer.Testing;

namespace Sequencer.Proof.Tests.KnownAnswers;

/// <summary>
/// The railway crossing of Alur and Dill ("A theory of timed automata", 1994) in discrete time: a train that has announced itself is
/// in the crossing only more than <c>approach</c> scans later, the controller tells the gate to close after <c>delay</c>
/// scans, and the gate is down within <c>closing</c> scans. Closed whenever the train is in exactly if delay and closing
/// together are at most the approach. Unlike there, the gate obeys at any time.
/// </summary>
internal static class TrainGate
{
    private const int Far = 0;
    private const int Near = 1;
    private const int In = 2;
    private const int Up = 0;
    private const int Closing = 1;
    private const int Down = 2;
    private const int Opening = 3;

    public static TransitionSystem Create(int approach, int delay, int closing)
    {
        Sketch sketch = new();
        Expression moves = sketch.Input("moves");
        Expression settles = sketch.Input("settles");
        Expression train = sketch.State("train", Far, In, Far);
        Expression gate = sketch.State("gate", Up, Opening, Up);
        Expression trainClock = sketch.State("train clock", 0, 2 * approach, 0);
        Expression gateClock = sketch.State("gate clock", 0, closing, 0);
        Expression near = sketch.Is(train, Near);
        Expression moving = sketch.Is(gate, Closing);
        Expression leaves = sketch.And(sketch.Is(train, In), moves);
        sketch.Next(train, sketch.Choose(
            train,
            (sketch.And(sketch.Is(train, Far), moves), Near),
            (sketch.And(near, sketch.AtLeast(trainClock, approach + 1), sketch.Or(moves, sketch.AtLeast(trainClock, 2 * approach))), In),
            (leaves, Far)));
        sketch.Clock(trainClock, near);
        sketch.Next(gate, sketch.Choose(
            gate,
            (leaves, Opening),
            (sketch.And(near, sketch.Is(trainClock, delay)), Closing),
            (sketch.And(moving, sketch.Or(settles, sketch.AtLeast(gateClock, closing))), Down),
            (sketch.And(sketch.Is(gate, Opening), settles), Up)));
        sketch.Clock(gateClock, moving);
        sketch.Require("closed for the train", sketch.Or(sketch.Not(sketch.Is(train, In)), sketch.Is(gate, Down)));
        return sketch.ToSystem();
    }
}
