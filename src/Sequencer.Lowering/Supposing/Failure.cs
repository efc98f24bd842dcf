namespace Sequencer.Lowering.Supposing;

/// <summary>
/// One instrument or device that fails. The program sees what the instrument shows; a requirement sees what is so in the plant: what
/// the instrument would show if it were well, and where the device really is.
/// </summary>
/// <param name="Tag">Of the instrument or the device.</param>
/// <param name="Mode">How it fails.</param>
public sealed record Failure(string Tag, FailureMode Mode);
