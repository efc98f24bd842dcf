namespace Sequencer.Sites.Tests.Variants;

/// <summary>A way to break a line, applied wherever it fits.</summary>
/// <param name="Name">In the words of the table of variants.</param>
/// <param name="Breaks">All results on one line.</param>
internal sealed record VariantOperator(string Name, Func<ProgramLine, IEnumerable<BrokenLine>> Breaks);
