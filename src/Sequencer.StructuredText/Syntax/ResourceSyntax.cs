namespace Sequencer.StructuredText.Syntax;

/// <summary><c>RESOURCE name ON processor</c></summary>
public sealed record ResourceSyntax(NameSyntax Name, NameSyntax Processor);
