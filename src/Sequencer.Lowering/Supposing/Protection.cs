using Sequencer.Text;

namespace Sequencer.Lowering.Supposing;

/// <summary>A protection that can be taken out of a program by itself.</summary>
/// <param name="Name">As the site calls it; unique on the site.</param>
/// <param name="Unit">The unit that declares it.</param>
/// <param name="Kind">What it is.</param>
/// <param name="Title">The author's title, or what it does.</param>
/// <param name="Span">Where it is written.</param>
public sealed record Protection(string Name, string Unit, ProtectionKind Kind, string Title, SourceSpan Span);
