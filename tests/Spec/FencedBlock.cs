namespace Sequencer.Spec.Tests;

/// <summary>A fenced block of a document: where its fence stands, what the fence line says, and the text inside.</summary>
public sealed record FencedBlock(string Path, int Line, string Tag, string Text)
{
    public override string ToString() => $"{Path}:{Line} ({Tag})";
}
