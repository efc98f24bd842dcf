using System.Collections.ObjectModel;
using System.Globalization;
using System.Reflection;
using System.Text;
using System.Text.RegularExpressions;
using Sequencer.Testing;

namespace Sequencer.Plant.Tests.OutsideChecks;

/// <summary>The marked tests, run once more with an ear on what they compare, as a page.</summary>
internal static partial class OutsideCheckPage
{
    /// <summary>A table with one row for each marked test.</summary>
    public static string Text(out int rows)
    {
        StringBuilder page = new();
        Dictionary<Basis, int> counts = [];
        int values = 0;
        int played = 0;
        StringBuilder table = new();
        foreach (Type type in typeof(OutsideCheckPage).Assembly.GetTypes().OrderBy(type => type.FullName, StringComparer.Ordinal))
        {
            foreach (MethodInfo test in type.GetMethods().Where(method => method.GetCustomAttribute<OutsideCheckAttribute>() is not null).OrderBy(method => method.Name, StringComparer.Ordinal))
            {
                Basis basis = test.GetCustomAttribute<OutsideCheckAttribute>()?.Basis ?? Basis.Computed;
                (IReadOnlyList<Comparison> comparisons, bool isPlayed) = Run(type, test);
                Assert.True(comparisons.Count > 0, $"{type.Name}.{test.Name} compares nothing that could be listed");
                counts[basis] = counts.GetValueOrDefault(basis) + 1;
                values += comparisons.Count;
                played += isPlayed ? 1 : 0;
                table.Append(Row(type, test, basis, comparisons, isPlayed));
            }
        }

        rows = counts.Values.Sum();
        page.Append(CultureInfo.InvariantCulture, $"""
            # Checks of the physics against the outside

            Written by a test that runs the tests listed (`ACCEPT_GOLDEN=1 dotnet test tests/Sequencer.Plant.Tests --filter OutsideCheck` writes it anew), so that it says what they say.
            **{rows} checks** with {values} values, {played} of them *played*: a plant is described as its user would, set going, and its run gives the value; {rows - played} *called*: they ask a function that the plant's
            equations or `sequencer dose` call (most of them the solver of equilibrium, with the constants that plants have). No check is of a formula that nothing else calls.
            {counts.GetValueOrDefault(Basis.Published)} are against values printed in a source (*published*), {counts.GetValueOrDefault(Basis.Computed)} against values worked out apart from this program
            from published constants, data or formulas (*computed*), {counts.GetValueOrDefault(Basis.Memory)} against values that are remembered only (*memory*). Each test counts once, however many values it has: the
            {ReferenceRows()} points of the speciation reference are {ReferenceTests()} of the checks. Shown is the value that comes nearest its tolerance.

            | what | basis and source | how | values | expected | ours | tolerance | test |
            | --- | --- | --- | --- | --- | --- | --- | --- |

            """);
        return page.Append(table).ToString();
    }

    private static int ReferenceRows() => File.ReadLines(RepositoryPath.At("tests", "Sequencer.Plant.Tests", "Chemistry", "Reference", "speciation.csv"))
        .Count(line => line.Length > 0 && line[0] != '#') - 1;

    private static int ReferenceTests() => typeof(Chemistry.SpeciationReferenceTests).GetMethods().Count(method => method.GetCustomAttribute<OutsideCheckAttribute>() is not null);

    private static (IReadOnlyList<Comparison> Comparisons, bool IsPlayed) Run(Type type, MethodInfo test)
    {
        object[][] cases = [.. test.GetCustomAttributesData()
            .Where(data => data.AttributeType == typeof(InlineDataAttribute))
            .Select(data => Arguments(test, (ReadOnlyCollection<CustomAttributeTypedArgument>)data.ConstructorArguments[0].Value!))];
        return Comparison.During(() =>
        {
            foreach (object[] arguments in cases.Length > 0 ? cases : [[]])
            {
                test.Invoke(Activator.CreateInstance(type), arguments);
            }
        });
    }

    private static object[] Arguments(MethodInfo test, ReadOnlyCollection<CustomAttributeTypedArgument> given) =>
        [.. test.GetParameters().Select((parameter, index) => Value(parameter.ParameterType, given[index]))];

    private static object Value(Type wanted, CustomAttributeTypedArgument argument) => argument.Value switch
    {
        ReadOnlyCollection<CustomAttributeTypedArgument> many => many.Select(one => Convert.ToDouble(one.Value, CultureInfo.InvariantCulture)).ToArray(),
        CustomAttributeTypedArgument inner => Value(wanted, inner),
        { } value => Convert.ChangeType(value, wanted, CultureInfo.InvariantCulture),
        null => throw new InvalidOperationException("a case without a value"),
    };

    private static string Row(Type type, MethodInfo test, Basis basis, IReadOnlyList<Comparison> comparisons, bool isPlayed)
    {
        Comparison nearest = comparisons.MaxBy(comparison => comparison.Share);
        string what = test.Name.Replace('_', ' ');
        string kind = basis switch { Basis.Published => "published", Basis.Computed => "computed", _ => "memory" };
        return string.Create(
            CultureInfo.InvariantCulture,
            $"| {what} | *{kind}.* {Comment(type, test)} | {(isPlayed ? "played" : "called")} | {comparisons.Count} | {nearest.Expected:G5} | {nearest.Ours:G5} | {nearest.Band:G2} | `{type.Name}` |\n");
    }

    /// <summary>What the comment above the test says, or else the one above its class.</summary>
    private static string Comment(Type type, MethodInfo test)
    {
        string folder = RepositoryPath.At(["tests", "Sequencer.Plant.Tests", .. type.Namespace!.Split('.')[3..]]);
        string source = File.ReadAllText(Path.Combine(folder, $"{type.Name}.cs"));
        string before = source[..source.IndexOf($" {test.Name}(", StringComparison.Ordinal)];
        string own = before[(Math.Max(before.LastIndexOf("\n    }\n", StringComparison.Ordinal), before.LastIndexOf(";\n\n", StringComparison.Ordinal)) + 1)..];
        string comment = Summary(own);
        return comment.Length > 0 ? comment : Summary(source[..source.IndexOf("public sealed class", StringComparison.Ordinal)]);
    }

    private static string Summary(string text)
    {
        Match summary = SummaryPattern().Match(text);
        return summary.Success ? BlanksPattern().Replace(summary.Groups[1].Value.Replace("///", "", StringComparison.Ordinal), " ").Trim().Replace("|", "/", StringComparison.Ordinal) : "";
    }

    [GeneratedRegex("<summary>(.*?)</summary>", RegexOptions.Singleline | RegexOptions.RightToLeft)]
    private static partial Regex SummaryPattern();

    [GeneratedRegex(@"\s+")]
    private static partial Regex BlanksPattern();
}
