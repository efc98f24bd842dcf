namespace Sequencer.Plant;

/// <summary>
/// A transmitter as the controller is told of it: 4 mA stands for <paramref name="Low"/>, 20 mA for
/// <paramref name="High"/>, both in <paramref name="Unit"/>.
/// </summary>
public sealed record TransmitterPort(string Tag, double Low, double High, string Unit);
