using System.Reflection;
using System.Text.RegularExpressions;
using Sequencer.Testing;
using Sequencer.Text;

namespace Sequencer.Spec.Tests;

/// <summary>The codes that the factory classes (<c>…Diagnostics</c>) of all projects can make.</summary>
internal static partial class DiagnosticCodes
{
    private static readonly string[] Projects =
    [
        "Sequencer.Text", "Sequencer.Language", "Sequencer.Control", "Sequencer.Lowering", "Sequencer.Proof", "Sequencer.StructuredText",
        "Sequencer.Export", "Sequencer.Plant", "Sequencer.Simulation", "Sequencer.Sites",
    ];

    /// <summary>Static classes whose name ends in Diagnostics and that make diagnostics, by reflection.</summary>
    public static IReadOnlyList<Type> Factories { get; } =
    [
        .. Projects.Select(Assembly.Load).SelectMany(assembly => assembly.GetTypes())
            .Where(type => type is { IsAbstract: true, IsSealed: true } && type.Name.EndsWith("Diagnostics", StringComparison.Ordinal) && Makers(type).Any())
            .OrderBy(type => type.FullName, StringComparer.Ordinal),
    ];

    public static IEnumerable<MethodInfo> Makers(Type factory) =>
        factory.GetMethods(BindingFlags.Static | BindingFlags.Public | BindingFlags.NonPublic | BindingFlags.DeclaredOnly)
            .Where(method => method.ReturnType == typeof(Diagnostic) && (method.IsPublic || method.IsAssembly));

    /// <summary>The codes written in the file or files of a factory, each as often as it is written.</summary>
    public static IReadOnlyList<string> Of(Type factory)
    {
        string folder = RepositoryPath.At("src", factory.Assembly.GetName().Name ?? "");
        string[] files = [.. Directory.GetFiles(folder, factory.Name + ".cs", SearchOption.AllDirectories), .. Directory.GetFiles(folder, factory.Name + ".*.cs", SearchOption.AllDirectories)];
        Assert.True(files.Length > 0, $"{factory.Name}.cs was not found");
        return [.. files.SelectMany(file => Code().Matches(File.ReadAllText(file))).Select(match => match.Groups["code"].Value)];
    }

    [GeneratedRegex("\"(?<code>SEQ\\d{4})\"")]
    private static partial Regex Code();
}
