using System.Collections.Immutable;
using Sequencer.Text;

namespace Sequencer.Language.Syntax;

/// <summary><c>equipment DOSE1 is DosingPump(pump = P303, rate = 12 L/h)</c>.</summary>
internal sealed record EquipmentSyntax(WordSyntax Name, WordSyntax Module, ImmutableArray<ArgumentSyntax> Arguments, TextSpan Span) : DeclarationSyntax(Name, Span);
