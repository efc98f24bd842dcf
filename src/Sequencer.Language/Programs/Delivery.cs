using Sequencer.Language.Units;
using Sequencer.Text;

namespace Sequencer.Language.Programs;

/// <summary>What the device delivers while on, and how fast, in litres a second; its total counts whole scans.</summary>
public sealed record Delivery(Reagent Reagent, Rational LitresPerSecond, Unit RateUnit, SourceSpan Span);
