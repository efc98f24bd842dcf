using System.Collections.Immutable;
using Sequencer.Text;

namespace Sequencer.Language.Programs;

public sealed record AnyOf(ImmutableArray<Condition> Conditions, SourceSpan Span) : Condition(Span);
