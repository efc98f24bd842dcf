using System.Collections.Immutable;
using Sequencer.Language.Units;
using Sequencer.Text;

namespace Sequencer.Language.Programs;

/// <summary>Never two of the outputs at once, and <see cref="Between"/> from the end of one to the start of another; the first written wins.</summary>
public sealed record Exclusion(string Name, string Title, ImmutableArray<Output> Outputs, Duration Between, SourceSpan Span);
