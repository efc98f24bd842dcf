using Sequencer.Plant.Hydraulics;

namespace Sequencer.Plant.Reaction;

/// <summary>A tank that reaches its rim, or else its heel, at a time (s).</summary>
internal readonly record struct TankLimit(TankBody Tank, double Time, bool IsRim);
