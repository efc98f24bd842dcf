using System.Collections.Immutable;

namespace Sequencer.Text;

/// <summary>A file's text; <see cref="Text"/> is null, and <see cref="Diagnostics"/> say why, where there is none.</summary>
public sealed record DecodedText(SourceText? Text, ImmutableArray<Diagnostic> Diagnostics);
