using System.Collections.Immutable;
using Sequencer.Text;

namespace Sequencer.Language.Syntax;

/// <summary><c>driven while holding or stopping</c>: the sections whose steps may drive an output.</summary>
internal sealed record DrivenSyntax(ImmutableArray<WordSyntax> Sections, TextSpan Span) : SyntaxNode(Span);
