using Sequencer.Text;

namespace Sequencer.StructuredText.Syntax;

/// <summary><c>PROGRAM instance WITH task : type;</c></summary>
public sealed record ProgramInstanceSyntax(NameSyntax Name, NameSyntax? Task, NameSyntax Type, SourceSpan Span);
