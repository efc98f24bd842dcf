using System.Collections.Immutable;
using Sequencer.Text;

namespace Sequencer.Language.Programs;

/// <summary>Outputs that steps of several units drive, of one unit at a time: the one that has been granted its claim. None where units only take turns.</summary>
public sealed record SharedEquipment(string Name, string Title, ImmutableArray<Output> Outputs, SourceSpan Span);
