using Microsoft.CodeAnalysis;

namespace Sequencer.HouseRules.Tests;

/// <summary>A C# file: its path from the repository's root, its text and its syntax.</summary>
internal sealed record SourceFile(string Path, string Text, SyntaxNode Root)
{
    public string Name => System.IO.Path.GetFileNameWithoutExtension(Path);

    public int LineCount => Text.Count(character => character == '\n') + (Text.EndsWith('\n') ? 0 : 1);
}
