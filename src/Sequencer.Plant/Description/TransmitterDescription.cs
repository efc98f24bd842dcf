using Sequencer.Plant.Yaml;

namespace Sequencer.Plant.Description;

/// <summary>A 4-20 mA transmitter. Values are in base units; <paramref name="Unit"/> is the one its range was written in.</summary>
/// <param name="Tag">the input's tag</param>
/// <param name="Measures">what it measures</param>
/// <param name="In">the tank, store, line or sample loop</param>
/// <param name="Low">value at 4 mA</param>
/// <param name="High">value at 20 mA</param>
/// <param name="Unit">unit of the range</param>
/// <param name="LagSeconds">first-order lag; 0 for none</param>
/// <param name="DeadTimeSeconds">dead time of the instrument itself</param>
/// <param name="Noise">standard deviation of each reading</param>
/// <param name="DriftPerDay">steady drift</param>
/// <param name="Resolution">step of the output; 0 for none</param>
/// <param name="CoveredFromLitres">a probe in the tank is dry below this volume; 0 where it cannot be</param>
/// <param name="FailsHigh">which NE 43 failure current it gives when it finds itself failed</param>
/// <param name="Steady">what the instrument sees all the time, or a pressure at full speed, in base units; null for one that sees the model</param>
/// <param name="PerSuspended">of a turbidity: NTU for each gram of solids in a litre; 0 for one that is steady</param>
/// <param name="Offset">what it reads too high, all the time</param>
/// <param name="SwappedWith">the transmitter at whose terminals its wires may have been landed, and the other way round; null where none is thought of</param>
public sealed record TransmitterDescription(
    string Tag,
    Measured Measures,
    string In,
    double Low,
    double High,
    Unit Unit,
    double LagSeconds,
    double DeadTimeSeconds,
    double Noise,
    double DriftPerDay,
    double Resolution,
    double CoveredFromLitres,
    bool FailsHigh,
    double? Steady,
    double PerSuspended = 0.0,
    double Offset = 0.0,
    string? SwappedWith = null);
