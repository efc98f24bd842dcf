using System.Collections.Immutable;
using Sequencer.Control.TransitionSystems;
using Sequencer.Language.Programs;
using Sequencer.Text;

namespace Sequencer.Export.Wiring;

/// <summary>One signal of a site as its program declares it, which is what the wiring of a text is held against.</summary>
/// <param name="Path">The variable of the program that it is to be, or is to come from: a tag, or <c>TAG.contact</c>.</param>
/// <param name="Kind">Which.</param>
/// <param name="Address">Where it stands in the controller, as <c>%IX0.1</c>.</param>
/// <param name="Range">Of a reading or a set value, at 4 and at 20 mA, in whole steps of its resolution.</param>
/// <param name="Inverted">Of a coil: the device is on without power.</param>
/// <param name="Span">Where it is declared.</param>
public sealed record WiredPoint(string Path, PointKind Kind, string Address, IntegerRange Range, bool Inverted, SourceSpan Span)
{
    public static ImmutableArray<WiredPoint> Of(SiteProgram site) => [.. site.Units.SelectMany(Of)];

    private static IEnumerable<WiredPoint> Of(UnitProgram unit) =>
    [
        .. unit.AnalogueInputs.Select(input => new WiredPoint(input.Tag, PointKind.Reading, $"{input.Address}", new IntegerRange(input.Minimum, input.Maximum), false, input.Span)),
        .. unit.SwitchInputs.Select(input => new WiredPoint($"{input.Tag}.contact", PointKind.Contact, $"{input.Address}", IntegerRange.Boolean, false, input.Span)),
        .. unit.Outputs.Select(output => new WiredPoint(output.Tag, PointKind.Coil, $"{output.Address}", IntegerRange.Boolean, output.DeEnergised, output.Span)),
        .. unit.AnalogueOutputs.Select(output => new WiredPoint(output.Tag, PointKind.Setting, $"{output.Address}", new IntegerRange(output.Minimum, output.Maximum), false, output.Span)),
    ];
}
