namespace Sequencer.Language.Binding;

/// <summary>A statement of a known form, and where its line starts.</summary>
internal readonly record struct PlacedSyntax<T>(T Syntax, LinePlace Place)
    where T : Syntax.StatementSyntax;
