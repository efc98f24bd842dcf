using System.Collections.Immutable;
using Sequencer.Text;

namespace Sequencer.Language.Formatting;

/// <summary>
/// A program or a library in the canonical layout, and the libraries that it uses;
/// <see cref="Text"/> is null where mistakes keep it from being read.
/// </summary>
public sealed record FormatResult(string? Text, ImmutableArray<Diagnostic> Diagnostics, ImmutableArray<(string File, SourceSpan Span)> Uses);
