using Sequencer.Text;

namespace Sequencer.Language.Modules;

/// <summary>What comes in the place of a name of a module, and the argument that says so; null for a name of the module itself.</summary>
internal sealed record ModuleWord(string Text, SourceSpan? Given = null);
