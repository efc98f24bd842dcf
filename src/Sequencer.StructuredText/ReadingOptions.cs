namespace Sequencer.StructuredText;

/// <summary>
/// What is read of a text. <see cref="Unit"/> names a PROGRAM or FUNCTION_BLOCK; without it the program of the
/// CONFIGURATION is read, or the only one there is. <see cref="ScanMilliseconds"/> is the scan period where no
/// TASK gives one, in milliseconds.
/// </summary>
public sealed record ReadingOptions(string? Unit = null, int? ScanMilliseconds = null);
