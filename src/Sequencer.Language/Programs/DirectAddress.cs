using System.Collections.Immutable;
using Sequencer.Text;

namespace Sequencer.Language.Programs;

/// <summary>An IEC 61131-3 directly represented variable: <c>%IX0.3</c>, <c>%QW2</c>.</summary>
public sealed record DirectAddress(char Area, char Size, ImmutableArray<int> Place, SourceSpan Span)
{
    public override string ToString() => $"%{Area}{Size}{string.Join('.', Place)}";
}
