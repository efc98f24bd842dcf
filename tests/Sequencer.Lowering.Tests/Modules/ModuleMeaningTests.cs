using Sequencer.Control.TransitionSystems;
using Sequencer.Language.Checking;
using Sequencer.Testing;
using Sequencer.Text;

namespace Sequencer.Lowering.Tests.Modules;

/// <summary>A unit with equipment means what the unit means that has the lines of its modules written out.</summary>
public sealed class ModuleMeaningTests
{
    [Fact]
    public void A_module_and_its_lines_by_hand_are_one_transition_system() =>
        CsCheck.Gen.Int.SampleRepeatably(
            seed =>
            {
                RandomModule module = new(seed);
                Assert.True(
                    Hash(module.WithModule, module.Library) == Hash(module.ByHand, ""),
                    $"{module.Library}\n{module.WithModule}\n{module.ByHand}");
            },
            200);

    [Fact]
    public void One_value_that_differs_is_another_system()
    {
        RandomModule module = new(1);
        Assert.NotEqual(Hash(module.WithModule, module.Library), Hash(module.ByHand.Replace("< 0.500 m3", "< 0.600 m3", StringComparison.Ordinal), ""));
    }

    [Fact]
    public void Layout_and_order_of_arguments_say_nothing()
    {
        const string Library = "library 1\nmodule M(name motor_tag, address motor_at)\n  output motor_tag motor at motor_at \"Motor\" safe stopped\n";
        const string Head = "language 1\nunit U \"Unit\"\nuse \"l\"\nequipment E is M";
        const string Tail = "\nprocedure\n step 10 \"Run\"\n  run M1\n  limit 10 s then hold \"Slow\"\n  go finish when at step 10 stays 5 s\n";
        Assert.Equal(
            Hash(Head + "(motor_tag = M1, motor_at = %QX0.0)" + Tail, Library),
            Hash(Head + "(\n  motor_at=%QX0.0,\n\n  motor_tag = M1 -- the only one\n)" + Tail, Library));
    }

    private static string Hash(string program, string library)
    {
        CheckResult result = ProgramChecker.Check(new SourceText("u.seq", program), 100, libraries: (file, _, _) => new SourceText(file, library));
        Assert.True(result.Program is not null, DiagnosticRenderer.Render(result.Diagnostics) + program);
        return MeaningHash.Of(SiteLowering.Lower(new Language.Programs.SiteProgram("site", 100, [result.Program])));
    }
}
