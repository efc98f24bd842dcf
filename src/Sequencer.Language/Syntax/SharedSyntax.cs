using System.Collections.Immutable;
using Sequencer.Text;

namespace Sequencer.Language.Syntax;

/// <summary><c>shared SKID "Acid skid" P430, XV431</c>: outputs that one unit at a time may drive; without outputs a turn that units take.</summary>
internal sealed record SharedSyntax(WordSyntax Name, TextSyntax Title, ImmutableArray<WordSyntax> Outputs, TextSpan Span) : DeclarationSyntax(Name, Span);
