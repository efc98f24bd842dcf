using System.Collections.Immutable;
using Sequencer.Text;

namespace Sequencer.Language.Formatting;

/// <summary>A program in the canonical layout; <see cref="Text"/> is null where mistakes keep it from being read.</summary>
public sealed record FormatResult(string? Text, ImmutableArray<Diagnostic> Diagnostics);
