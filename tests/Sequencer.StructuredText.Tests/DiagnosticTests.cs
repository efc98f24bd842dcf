using System.Reflection;
using System.Text.RegularExpressions;
using Sequencer.Text;

namespace Sequencer.StructuredText.Tests;

public sealed partial class DiagnosticTests
{
    public static TheoryData<string> Codes => [.. FactoryCodes()];

    [Fact]
    public void Codes_are_unique_and_many()
    {
        List<string> codes = [.. FactoryCodes()];
        Assert.True(codes.Count > 30, "the factory methods are found");
        Assert.Equal(codes.Count, codes.Distinct().Count());
    }

    [Theory]
    [MemberData(nameof(Codes))]
    public void Each_code_has_a_page_whose_blocks_do_what_they_say(string code)
    {
        string page = Path.Combine(SpecificationPages.DiagnosticsFolder, $"{code}.md");
        Assert.True(File.Exists(page), $"no page spec/diagnostics/{code}.md");
        List<(string Expected, string Text)> blocks = [.. SpecificationPages.Blocks(page)];
        Assert.Equal([code, "clean"], blocks.Select(block => block.Expected));
        foreach ((string expected, string text) in blocks)
        {
            ReadingResult result = Scans.Read(text);
            string[] wanted = expected == "clean" ? [] : [expected];
            Assert.True(
                wanted.SequenceEqual(result.Diagnostics.Select(diagnostic => diagnostic.Code).Distinct()),
                $"{expected}:\n{DiagnosticRenderer.Render(result.Diagnostics)}");
        }
    }

    [Theory]
    [MemberData(nameof(Codes))]
    public void The_title_of_a_page_is_the_message(string code)
    {
        string page = Path.Combine(SpecificationPages.DiagnosticsFolder, $"{code}.md");
        string title = File.ReadLines(page).First();
        Assert.StartsWith($"# {code}: ", title, StringComparison.Ordinal);
        string pattern = "^" + Hole().Replace(Regex.Escape(title[(code.Length + 4)..]), "[\\s\\S]+") + "$";
        string message = Scans.Read(SpecificationPages.Blocks(page).First().Text).Diagnostics.First(one => one.Code == code).Message;
        Assert.Matches(pattern, message);
    }

    [Fact]
    public void One_mistake_does_not_hide_the_next()
    {
        ReadingResult result = Scans.Read(
            """
            PROGRAM P
            VAR_INPUT A : BOOL; B : INT; END_VAR
            VAR_OUTPUT Q : BOOL; END_VAR
            Q := A +;
            IF A B THEN Q := C; END_IF;
            Q := D;
            IF A THEN
              Q := := A;
              Q := B;
            END_IF;
            Q := A;
            END_PROGRAM
            """);
        Assert.Equal(
            [(4, "SEQ0705"), (5, "SEQ0705"), (5, "SEQ0710"), (6, "SEQ0710"), (8, "SEQ0705"), (9, "SEQ0713")],
            result.Diagnostics.Select(diagnostic => (diagnostic.Span.Start.Line, diagnostic.Code)));
        Assert.Null(result.System);
    }

    [Fact]
    public void A_forgotten_end_is_reported_once()
    {
        ReadingResult result = Scans.Read("PROGRAM P\nVAR_OUTPUT Q : BOOL; END_VAR\nIF TRUE THEN Q := TRUE;\nEND_PROGRAM\n");
        Assert.Equal(["SEQ0705"], result.Diagnostics.Select(diagnostic => diagnostic.Code));
    }

    /// <summary>Calls each factory method with made-up arguments and takes the code of what it makes.</summary>
    private static IEnumerable<string> FactoryCodes()
    {
        SourceSpan span = new SourceText("test.st", "x").At(0, 1);
        foreach (MethodInfo method in typeof(StructuredTextDiagnostics).GetMethods(BindingFlags.Public | BindingFlags.Static))
        {
            object[] arguments = [.. method.GetParameters().Select(parameter => Sample(parameter.ParameterType, span))];
            yield return Assert.IsType<Diagnostic>(method.Invoke(null, arguments)).Code;
        }
    }

    private static object Sample(Type type, SourceSpan span) =>
        type == typeof(SourceSpan) ? span
        : type == typeof(string) ? "sample"
        : type == typeof(int) ? 7
        : new Control.TransitionSystems.IntegerRange(0, 1);

    [GeneratedRegex(@"\\\{[^}]+}")]
    private static partial Regex Hole();
}
