using System.Globalization;
using Sequencer.Control.TransitionSystems;
using Sequencer.Proof;
using Sequencer.Simulation.Pictures;
using Sequencer.Simulation.Traces;
using Sequencer.Sites.Traces;
using Sequencer.Testing;

namespace Sequencer.Sites.Tests.Traces;

public sealed class TraceFileTests
{
    private static readonly Lazy<FailingRun> HotDischarge = new(() => BrokenPit.HotDischarge().Run);

    private static readonly Lazy<FailingRun> Overfill = new(() => BrokenPit.Run(
        BrokenPit.Load("one-pit", "pit.seq", "interlock I1 \"Overfill\"                           XV300         blocked from LSHH301 until not LSHH301 and reset\n", ""), "H4"));

    [Fact]
    public void A_run_that_could_not_be_tidied_in_time_says_so()
    {
        (LoadedSite site, FailingRun run) = BrokenPit.HotDischarge();
        Requirement broken = site.System.Requirements.Single(one => one.Name == "H8");
        FailingRun hurried = FailingRun.Of(site, site.System, TraceEnd.Broken(broken), broken, run.Trace, isShortest: false, new CancellationToken(true));
        Assert.Contains("The time was over before the run was tidied", hurried.Words, StringComparison.Ordinal);
        Assert.DoesNotContain("The time was over", run.Words, StringComparison.Ordinal);
    }

    [Fact]
    public void A_run_of_several_steps_is_told_in_words() => GoldenFile.Matches(HotDischarge.Value.Words, "hot-discharge.verified.txt");

    [Fact]
    public void A_shortest_run_says_that_it_is() => GoldenFile.Matches(Overfill.Value.Words, "overfill.verified.txt");

    [Fact]
    public void A_run_of_several_steps_is_drawn()
    {
        using EmbeddedFont font = new();
        GoldenFile.Matches(TimingDiagram.Svg(HotDischarge.Value.Story, font), "hot-discharge.verified.svg");
    }

    [Fact]
    public void The_bitmap_is_as_large_as_the_drawing()
    {
        using EmbeddedFont font = new();
        byte[] png = TimingDiagram.Png(Overfill.Value.Story, font);
        string svg = TimingDiagram.Svg(Overfill.Value.Story, font);
        // The header chunk of a PNG holds width and height, big-endian, from byte 16 (ISO/IEC 15948, 11.2.2; clause from memory).
        int width = (png[16] << 24) | (png[17] << 16) | (png[18] << 8) | png[19];
        Assert.Contains(string.Create(CultureInfo.InvariantCulture, $"width=\"{width}\""), svg, StringComparison.Ordinal);
    }

    /// <summary>The run breaks the requirement by the fault of the line that was left out, so what is left does not block.</summary>
    [Fact]
    public void The_lines_that_took_part_are_those_of_the_fault()
    {
        TracePart[] parts = [.. Overfill.Value.Story.Parts];
        Assert.Contains(parts, part => part.Text.StartsWith("interlock I2", StringComparison.Ordinal) && part.Note == "does not block");
        Assert.Contains(parts, part => part.Text.StartsWith("require H4", StringComparison.Ordinal) && part.Note == "broken here");
        Assert.DoesNotContain(parts, part => part.Text.StartsWith("require H1 ", StringComparison.Ordinal) || part.Text.Contains("TT301", StringComparison.Ordinal));
        Assert.All(parts, part => Assert.Equal("pit.seq", part.Path));
    }

    [Fact]
    public void A_way_to_a_step_is_told_as_reached()
    {
        LoadedSite site = BrokenPit.Load("one-pit", "pit.seq", "language 1", "language 1");
        StateVariable step = site.System.States.Single(state => state.Variable.Name == "TK301.step20.active");
        ExpressionBuilder build = new();
        Expression elsewhere = build.Not(build.Variable(step.Variable));
        Requirement never = new("TK301.20", "Mix", "TK301 at step 20", RequirementKind.Never, elsewhere, step.Origin);
        Fails way = Assert.IsType<Fails>(Prover.Decide(site.System, never, ProofOptions.Default, null, CancellationToken.None));
        TraceEnd end = new(never.Name, never.Title, never.Statement, never.Holds, never.Origin, IsReached: true);
        string words = FailingRun.Of(site, site.System, end, never, way.Trace, way.IsShortest, CancellationToken.None).Words;
        Assert.StartsWith("TK301.20 \"Mix\" is reached ", words, StringComparison.Ordinal);
        Assert.Contains("goes from step 10 to step 20 \"Mix\"", words, StringComparison.Ordinal);
        Assert.DoesNotContain("broken", words, StringComparison.Ordinal);
    }
}
