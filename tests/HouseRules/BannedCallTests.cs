using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp.Syntax;

namespace Sequencer.HouseRules.Tests;

/// <summary>Libraries give the same bytes for the same input: no console, clock, machine or unseeded chance.</summary>
public sealed class BannedCallTests
{
    private static readonly string[] BannedTypes = ["Console", "Environment", "Stopwatch", "TimeProvider"];
    private static readonly string[] BannedMembers =
    [
        "DateTime.Now", "DateTime.UtcNow", "DateTime.Today", "DateTimeOffset.Now", "DateTimeOffset.UtcNow",
        "Random.Shared", "Guid.NewGuid", "Thread.Sleep", "Process.Start", "CultureInfo.CurrentCulture", "CultureInfo.CurrentUICulture",
    ];

    private static readonly string[] NumericTypes = ["int", "long", "double", "decimal", "float", "short", "byte", "uint", "ulong", "BigInteger", "TimeSpan", "DateTime"];

    [Fact]
    public void Libraries_touch_no_console_clock_machine_or_unseeded_chance()
    {
        List<(SourceFile File, MemberAccessExpressionSyntax Access)> seen = Nodes<MemberAccessExpressionSyntax>();

        Assert.True(seen.Count > 2000, "too few member accesses were seen");
        Assert.Empty(seen.Where(pair => IsBanned(pair.Access)).Select(pair => Place(pair.File, pair.Access)));
    }

    [Fact]
    public void Libraries_seed_every_random_number()
    {
        List<(SourceFile File, BaseObjectCreationExpressionSyntax Creation)> seen = Nodes<BaseObjectCreationExpressionSyntax>();

        Assert.True(seen.Count > 200, "too few object creations were seen");
        Assert.Empty(seen.Where(pair => pair.Creation.ArgumentList?.Arguments.Count is null or 0 && TypeOf(pair.Creation) == "Random")
            .Select(pair => Place(pair.File, pair.Creation)));
    }

    [Fact]
    public void Libraries_read_numbers_in_the_invariant_culture()
    {
        List<(SourceFile File, InvocationExpressionSyntax Call)> seen = Nodes<InvocationExpressionSyntax>();

        Assert.True(seen.Count > 1000, "too few calls were seen");
        Assert.Empty(seen.Where(pair => ReadsNumber(pair.Call) && !pair.Call.ArgumentList.ToString().Contains("CultureInfo.InvariantCulture", StringComparison.Ordinal))
            .Select(pair => Place(pair.File, pair.Call)));
    }

    [Fact]
    public void Libraries_keep_no_state_in_static_fields()
    {
        List<(SourceFile File, FieldDeclarationSyntax Field)> seen = Nodes<FieldDeclarationSyntax>();

        Assert.True(seen.Count > 100, "too few fields were seen");
        Assert.Empty(seen.Where(pair => Has(pair.Field, "static") && !Has(pair.Field, "readonly") && !Has(pair.Field, "const"))
            .Select(pair => Place(pair.File, pair.Field)));
    }

    private static bool IsBanned(MemberAccessExpressionSyntax access)
    {
        string[] parts = access.ToString().Split('.');
        return BannedTypes.Contains(parts[0]) || (parts is ["System", var second, ..] && BannedTypes.Contains(second))
            || BannedMembers.Any(member => access.ToString() is var text && (text == member || text.EndsWith("." + member, StringComparison.Ordinal)));
    }

    private static bool ReadsNumber(InvocationExpressionSyntax call) =>
        call.Expression is MemberAccessExpressionSyntax { Name.Identifier.Text: "Parse" or "TryParse" } access
        && NumericTypes.Contains(access.Expression.ToString());

    /// <summary>The type created, as written there or at the variable, field or property that takes it.</summary>
    private static string? TypeOf(BaseObjectCreationExpressionSyntax creation) => creation switch
    {
        ObjectCreationExpressionSyntax named => named.Type.ToString(),
        _ when creation.Parent is EqualsValueClauseSyntax { Parent: VariableDeclaratorSyntax { Parent: VariableDeclarationSyntax declaration } } => declaration.Type.ToString(),
        _ when creation.Parent is EqualsValueClauseSyntax { Parent: PropertyDeclarationSyntax property } => property.Type.ToString(),
        _ => null,
    };

    private static bool Has(FieldDeclarationSyntax field, string modifier) => field.Modifiers.Any(token => token.Text == modifier);

    private static List<(SourceFile File, T Node)> Nodes<T>()
        where T : SyntaxNode =>
        [.. SourceFiles.Libraries.SelectMany(file => file.Root.DescendantNodes().OfType<T>().Select(node => (file, node)))];

    private static string Place(SourceFile file, SyntaxNode node) =>
        $"{file.Path}:{node.GetLocation().GetLineSpan().StartLinePosition.Line + 1}: {node.ToString().Split('\n')[0]}";
}
