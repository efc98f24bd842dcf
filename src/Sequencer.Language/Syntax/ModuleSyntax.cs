using System.Collections.Immutable;
using Sequencer.Text;

namespace Sequencer.Language.Syntax;

/// <summary><c>module DosingPump(name pump, address pump_at, quantity rate)</c>; its declarations are the lines below it.</summary>
internal sealed record ModuleSyntax(WordSyntax Name, ImmutableArray<ModuleParameterSyntax> Parameters, TextSpan Span) : StatementSyntax(Span);
