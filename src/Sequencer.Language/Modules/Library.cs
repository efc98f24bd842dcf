using System.Collections.Immutable;
using Sequencer.Text;

namespace Sequencer.Language.Modules;

/// <summary>A library: its modules and the libraries that these may use in turn. Not <see cref="IsWhole"/> where a line that may have begun a module could not be read.</summary>
internal sealed record Library(SourceText Source, ImmutableArray<Module> Modules, ImmutableArray<(string File, SourceSpan Span)> Uses, bool IsWhole);
