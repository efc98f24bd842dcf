using Microsoft.CodeAnalysis.CSharp.Syntax;
using Sequencer.Control.TransitionSystems;

namespace Sequencer.HouseRules.Tests;

/// <summary>Every kind of expression is dealt with wherever expressions are run, encoded, written or named.</summary>
public sealed class ExpressionKindTests
{
    /// <summary>The stage, and the files of which at least one must name each kind.</summary>
    public static TheoryData<string, string[]> Stages => new()
    {
        { "interpreter", ["src/Sequencer.Control/Execution/InstructionExecution.cs", "src/Sequencer.Control/Execution/InstructionList.cs"] },
        { "specialiser of scans", ["src/Sequencer.Control/Execution/InstructionList.cs", "src/Sequencer.Control/Execution/Specialising/ValueClasses.cs"] },
        { "compiled stepper", ["src/Sequencer.Control/Execution/PieceCompiler.cs"] },
        { "writer of certificates", ["src/Sequencer.Proof/Certificates/SmtTranslation.cs"] },
        { "bit-blaster", ["src/Sequencer.Proof/BitBlasting/Encoding.cs"] },
        { "writer of expressions", ["src/Sequencer.Control/TransitionSystems/ExpressionText.cs"] },
    };

    [Theory]
    [MemberData(nameof(Stages))]
    public void Every_kind_is_handled(string stage, string[] paths)
    {
        string[] kinds = Enum.GetNames<ExpressionKind>();
        Assert.True(kinds.Length > 8, "too few kinds of expression were seen");

        List<SourceFile> files = [.. SourceFiles.Production.Where(file => paths.Contains(file.Path))];
        Assert.Equal(paths.Length, files.Count);
        HashSet<string> named =
        [
            .. files.SelectMany(file => file.Root.DescendantNodes().OfType<MemberAccessExpressionSyntax>())
                .Where(access => access.Expression.ToString() == nameof(ExpressionKind))
                .Select(access => access.Name.Identifier.Text),
        ];
        Assert.True(kinds.All(named.Contains), $"the {stage} does not name {string.Join(", ", kinds.Except(named))}");
    }
}
