using Sequencer.Language.Programs;
using Sequencer.Language.Units;

namespace Sequencer.Language.Rules.Analysis;

/// <summary>The comparisons in cause and release of an interlock <c>from … until …</c> that look at one reading.</summary>
internal static class ReleaseBands
{
    public static IEnumerable<(Condition Release, ReadingThreshold Cause, ReadingThreshold End)> Of(Interlock interlock)
    {
        if (interlock.Release is null)
        {
            yield break;
        }

        List<ReadingThreshold> causes = [.. ConditionTree.Facts(interlock.Condition).Select(Signed).OfType<ReadingThreshold>()];
        foreach (SignedFact release in ConditionTree.Facts(interlock.Release))
        {
            if (Signed(release) is { } end)
            {
                foreach (ReadingThreshold cause in causes.Where(cause => cause.Input.Tag == end.Input.Tag))
                {
                    yield return (release.Fact, cause, end);
                }
            }
        }
    }

    /// <summary>Some part of the release holds where, or right beside where, the cause does.</summary>
    public static bool Overlap(Interlock interlock) => Of(interlock).Any(band => Overlap(band.Cause, band.End));

    public static bool Overlap(ReadingThreshold cause, ReadingThreshold end) => cause.Above == end.Above || Width(cause, end).Sign <= 0;

    /// <summary>The least distance from the release's bound to the cause's; negative where they overlap.</summary>
    public static Rational Width(ReadingThreshold cause, ReadingThreshold end) => cause.Above ? cause.Low - end.High : end.Low - cause.High;

    private static ReadingThreshold? Signed(SignedFact signed) =>
        ReadingThreshold.Of(signed.Fact) is { } threshold ? signed.Positive ? threshold : threshold.Opposite() : null;
}
